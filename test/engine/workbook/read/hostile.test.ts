import { describe, expect, test } from "vitest";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { WorkbookRefused } from "../../../../engine/workbook/read/refused.js";
import { harmless, hostile } from "./hostile-files.js";

/** The promise is two seconds; a machine that runs other tests beside this one is given some more. */
const limit = 3000;

function refusal(bytes: Uint8Array): WorkbookRefused | undefined {
  try {
    readWorkbook(bytes);
    return undefined;
  } catch (error) {
    if (error instanceof WorkbookRefused) return error;
    throw error;
  }
}

describe("refused, with a sentence, in time", () => {
  test.each(hostile)("%s", { timeout: 20000 }, (_, make, code, says) => {
    const bytes = make();
    const start = performance.now();
    const error = refusal(bytes);
    const took = performance.now() - start;
    expect(error?.code).toBe(code);
    expect(error?.message).toContain(says);
    expect(error?.exitStatus).toBe(2);
    // A whole sentence or two, not a dump of the file.
    expect(error?.message).toMatch(/\.$/);
    expect(error?.message.length).toBeLessThan(400);
    expect(took).toBeLessThan(limit);
  });
});

test.each(Object.entries(harmless))("%s is read", (_, make) => {
  const bytes = make();
  const start = performance.now();
  expect(readWorkbook(bytes).sheets[0]?.cells.get("A1")?.value).toBe(1);
  expect(performance.now() - start).toBeLessThan(500);
});
