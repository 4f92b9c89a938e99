import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { Progress } from "../../../engine/rerun/progress.js";

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

/** A run of 1,000 files, ten a second. */
function watched(progress: Progress): void {
  for (let i = 0; i < 1000; i++) {
    vi.advanceTimersByTime(100);
    progress.add(1);
  }
  progress.end();
}

test("a log gets a whole line every quarter of a minute", () => {
  const lines: string[] = [];
  watched(new Progress(1000, undefined, (line) => lines.push(line)));
  expect(lines).toHaveLength(6);
  expect(lines[0]).toBe("150 of 1,000 files, 10 a second, 85 s left");
});

test("a terminal gets one line, redrawn at most five times a second and wiped at the end", () => {
  const texts: string[] = [];
  watched(new Progress(1000, (text) => texts.push(text)));
  expect(texts).toHaveLength(501);
  expect(texts.every((text) => text.startsWith("\r") && !text.includes("\n"))).toBe(true);
});
