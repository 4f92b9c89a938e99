import { describe, expect, test } from "vitest";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { WorkbookRefused } from "../../../../engine/workbook/read/refused.js";
import { harmless, hostile } from "./hostile-files.js";

function refusal(bytes: Uint8Array, look = false): WorkbookRefused | undefined {
  try {
    readWorkbook(bytes, { look });
    return undefined;
  } catch (error) {
    if (error instanceof WorkbookRefused) return error;
    throw error;
  }
}

// what would hang a reader ends at the time limit, which is far beyond what a slow machine needs to make the largest
// and to read it twice; memory.test.ts holds the largest to their memory
describe("refused, with a sentence", () => {
  test.each(hostile)("%s", { timeout: 60_000 }, (_, make, code, says) => {
    const bytes = make();
    const error = refusal(bytes);
    expect(error?.code).toBe(code);
    expect(error?.message).toContain(says);
    expect(error?.exitStatus).toBe(2);
    // A whole sentence or two, not a dump of the file.
    expect(error?.message).toMatch(/\.$/);
    expect(error?.message.length).toBeLessThan(400);
    expect(refusal(bytes, true)?.code).toBe(code);
  });
});

test.each(Object.entries(harmless))("%s is read", (_, make) => {
  const bytes = make();
  for (const look of [false, true]) {
    expect(readWorkbook(bytes, { look }).sheets[0]?.cells.get("A1")?.value).toBe(1);
  }
});
