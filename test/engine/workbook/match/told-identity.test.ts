import { expect, test } from "vitest";
import { toldIdentity } from "../../../../engine/workbook/match/told-identity.js";
import type { WorkbookContent } from "../../../../engine/workbook/read/content.js";

/** A workbook that lost its custom properties, by what its first sheet says in A2. */
function lostWith(title: string): WorkbookContent {
  const texts: [string, string][] = [
    ["A2", title],
    ["A22", "Template"],
    ["C22", "fence, version 3, US customary units"],
  ];
  const cells = new Map(texts.map(([address, value]) => [address, { value, style: 0 }]));
  return { sheets: [{ cells }], properties: { custom: new Map() } } as unknown as WorkbookContent;
}

test.each([
  ["Job F-1.", "F-1"],
  ["A fence, job F-1.", "F-1"],
  ["A fence, job No. 7, Mill Lane.", "No. 7, Mill Lane"],
  ["Job the job at St. Anne.", "the job at St. Anne"],
  // as older workbooks say it
  ["Job F-1. Every figure is a live formula: change a boxed cell and it follows.", "F-1"],
  ["A fence, job F-1. Every figure is a live formula.", "F-1"],
  ["A sheet of somebody else.", undefined],
])("%s", (title, job) => {
  const { identity, lost } = toldIdentity(lostWith(title));
  expect(lost).toBe(true);
  expect(identity.job).toBe(job);
});
