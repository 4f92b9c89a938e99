import { expect, test } from "vitest";
import type { LookPair } from "../../../../engine/audit/look/compared.js";
import { titles } from "../../../../engine/audit/look/repeated.js";

const content = (name: string, text?: string) => ({
  names:
    text === undefined ? [] : [{ name, text, scope: "List", hidden: false, target: undefined }],
});

/** What is said of a sheet that repeats some rows and was written with others, its lines moved down by so many. */
function said(
  now: string | undefined,
  then: string | undefined,
  name = "_xlnm.Print_Titles",
  down = 0,
) {
  const pair = {
    found: { name: "List" },
    fresh: { name: "List" },
    content: content(name, now),
    freshContent: content("_xlnm.Print_Titles", then),
    map: {
      to: ({ row, column }: { row: number; column: number }) => ({ row: row + down, column }),
    },
  };
  return titles(pair as unknown as LookPair).map(({ found, expected }) => [found, expected]);
}

test.each([
  ["'List'!$5:$6", "'List'!$5:$6"],
  ["List!$5:$6", "'List'!$5:$6"],
  ["List!$A$5:$XFD$6", "'List'!$5:$6"],
  [undefined, undefined],
  ["#REF!", undefined],
])("%s where %s is written: nothing is said", (now, then) => {
  expect(said(now, then)).toEqual([]);
});

test("rows that moved with their lines, and the name that Gnumeric gives", () => {
  expect(said("List!$7:$8", "'List'!$5:$6", "Print_Titles", 2)).toEqual([]);
});

test.each([
  ["List!$1:$2", "'List'!$5:$6", "rows 1 to 2", "rows 5 to 6"],
  ["List!$5:$9", "'List'!$5:$6", "rows 5 to 9", "rows 5 to 6"],
  [undefined, "'List'!$5:$5", "no row", "row 5"],
  ["List!$5:$6", undefined, "rows 5 to 6", "no row"],
  ["List!$A:$B,List!$5:$6", "'List'!$5:$6", "rows 5 to 6 and columns A to B", "rows 5 to 6"],
  ["List!$A:$A", "'List'!$5:$6", "column A", "rows 5 to 6"],
])("%s where %s is written", (now, then, found, expected) => {
  expect(said(now, then)).toEqual([[`${found} printed again on each page`, expected]]);
});

test("a table that was shorter as it was written has no row that repeats yet", () => {
  const pair = {
    ...{ found: { name: "List" }, fresh: { name: "List" }, map: { to: (at: object) => at } },
    content: content("", undefined),
    freshContent: content("_xlnm.Print_Titles", "'List'!$5:$6"),
  };
  const graded = (more: object) =>
    titles({ ...pair, ...more } as unknown as LookPair).map(({ grade }) => grade);
  expect(graded({ onceContent: content("", undefined) })).toEqual(["to know"]);
  expect(graded({ onceContent: pair.freshContent })).toEqual(["doubtful"]);
});
