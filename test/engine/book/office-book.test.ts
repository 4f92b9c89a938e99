import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import exceljs from "exceljs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOfficeBook } from "../../../engine/book/read.js";
import { writeOfficeBook } from "../../../engine/book/write.js";
import type { BookLayout } from "../../../engine/template/book-layout.js";

const layout: BookLayout = [
  {
    name: "boards",
    sheet: "Boards",
    means: "What the joiner buys.",
    columns: [
      { key: "code", kind: "code", required: true, means: "Code." },
      { key: "unit", kind: "text", required: true, choices: ["ft", "each"], means: "Unit." },
      { key: "cost", kind: "number", required: true, least: 0, means: "Cost of one, $." },
      { key: "good_until", kind: "date", required: true, means: "Last day." },
      { key: "planed", kind: "yesno", means: "Planed?" },
    ],
    rule: (row) =>
      row.unit === "each" && row.cost === 0 ? "free boards are sold by the foot." : undefined,
  },
];

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-book-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

type Cell = string | number | boolean | null;
const header: Cell[] = ["code", "unit", "cost", "good_until", "planed"];
// 46112 is 2026-03-31
const oak: Cell[] = ["oak", "ft", 4.5, 46112, "yes"];

async function workbook(
  rows: readonly Cell[][],
  about: Cell[][] = [
    ["name", "Boards 2026"],
    ["as_of", 46023],
  ],
) {
  const book = new exceljs.Workbook();
  const fill = (name: string, lines: readonly Cell[][]) => {
    const sheet = book.addWorksheet(name);
    lines.forEach((line, i) => {
      line.forEach((value, j) => {
        sheet.getCell(i + 1, j + 1).value = value;
      });
    });
  };
  fill("About", about);
  fill("Boards", rows);
  const path = join(folder, "boards.xlsx");
  await writeFile(path, new Uint8Array(await book.xlsx.writeBuffer()));
  return path;
}

const faultsOf = async (path: string) => {
  const error = await readOfficeBook(path, layout).catch((caught: Error) => caught);
  if (!(error instanceof Error)) throw new Error("the book was taken");
  expect(error.message).toContain(`The office book ${path} cannot be used:`);
  return error.message
    .split("\n")
    .slice(1)
    .map((line) => line.replace("  - ", ""));
};

test("a workbook: dates become text, yes and no become booleans, blank rows are passed over", async () => {
  const pine: Cell[] = ["pine", "each", 2, "2026-12-31", null];
  const book = await readOfficeBook(await workbook([header, oak, [null, " "], pine]), layout);
  expect(book).toMatchObject({ name: "Boards 2026", asOf: "2026-01-01" });
  expect(book.tables.boards).toEqual([
    { code: "oak", unit: "ft", cost: 4.5, good_until: "2026-03-31", planed: true },
    { code: "pine", unit: "each", cost: 2, good_until: "2026-12-31" },
  ]);
});

test.each<[string, Cell[][], string]>([
  [
    "a code twice, in another case",
    [header, oak, ["Oak", "ft", 1, 46112]],
    'sheet Boards, row 3, code "Oak": row 2 has the same code, and upper and lower case count as one. Give each its own, or take one out.',
  ],
  [
    "a missing column",
    [
      ["code", "unit", "good_until"],
      ["oak", "ft", 46112],
    ],
    'sheet Boards: the column "cost" (Cost of one, $.) is missing. Add it.',
  ],
  [
    "an unknown column",
    [[...header, "planned"], oak],
    'sheet Boards: the column "planned" is not known. Did you mean "planed"? Rename it, or move it to a sheet of its own.',
  ],
  [
    "a cell without a heading",
    [header, [...oak, "see letter"]],
    'sheet Boards, row 2, code "oak": "column 6 (without a heading)" is not known. Rename it or take it out.',
  ],
  [
    "text where a number must be",
    [header, ["oak", "ft", "4.50 $", 46112]],
    'sheet Boards, row 2, code "oak": cost (C2) is "4.50 $", but must be a number. Type it without unit or sign of money.',
  ],
  [
    "a negative cost",
    [header, ["oak", "ft", -4.5, 46112]],
    'sheet Boards, row 2, code "oak": cost (C2) is -4.5, but must be at least 0. Correct it.',
  ],
  [
    "a blank cost",
    [header, ["oak", "ft", null, 46112]],
    'sheet Boards, row 2, code "oak": cost (C2) is blank, but is needed. Fill it in.',
  ],
  [
    "an unknown unit",
    [header, ["oak", "feet", 4.5, 46112]],
    'sheet Boards, row 2, code "oak": unit (B2) is "feet", but must be one of: ft, each. Did you mean "ft"?',
  ],
  [
    "a number that is no date",
    [header, ["oak", "ft", 4.5, 20260331]],
    'sheet Boards, row 2, code "oak": good_until (D2) is 20260331, which is not a date. Type a date, such as 2026-05-31.',
  ],
  [
    "a day that is not in the calendar",
    [header, ["oak", "ft", 4.5, "2026-02-30"]],
    'sheet Boards, row 2, code "oak": good_until (D2) is "2026-02-30", which is not a date. Type a date, such as 2026-05-31.',
  ],
  [
    "data without a code",
    [header, [null, "ft", 4.5, 46112]],
    "sheet Boards, row 2: code (A2) is blank, but is needed. Fill it in.",
  ],
  [
    "a code that is a number",
    [header, [7, "ft", 4.5, 46112]],
    "sheet Boards, row 2, code 7: code (A2) is 7, but must be text. Format the cell as text and type it again.",
  ],
  [
    "a code with a wildcard",
    [header, ["oak*", "ft", 4.5, 46112]],
    'sheet Boards, row 2, code "oak*": code (A2) is "oak*", but a code has letters, digits, "-", "_" and "." only. Give it another code.',
  ],
  [
    "neither yes nor no",
    [header, ["oak", "ft", 4.5, 46112, "perhaps"]],
    'sheet Boards, row 2, code "oak": planed (E2) is "perhaps", but must be yes or no. Correct it.',
  ],
  [
    "a row that breaks the rule of its table",
    [header, ["oak", "each", 0, 46112]],
    'sheet Boards, row 2, code "oak": free boards are sold by the foot.',
  ],
])("%s is named with its place", async (_, rows, fault) => {
  expect(await faultsOf(await workbook(rows))).toEqual([fault]);
});

test("a cell in error is no price", async () => {
  const path = await workbook([header, oak]);
  const book = new exceljs.Workbook();
  await book.xlsx.readFile(path);
  const cell = book.getWorksheet("Boards")?.getCell("C2");
  if (cell === undefined) throw new Error("no cell C2");
  cell.value = { formula: "1/0", result: { error: "#DIV/0!" } };
  await book.xlsx.writeFile(path);
  expect(await faultsOf(path)).toEqual([
    'sheet Boards, row 2, code "oak": cost (C2) holds the error #DIV/0!. Type the value.',
  ]);
});

test("all faults are told at once, and a missing name, day and sheet too", async () => {
  const path = await workbook([header, ["oak", "ft", -1, "soon"]], []);
  expect(await faultsOf(path)).toHaveLength(4);
  const other = join(folder, "other.json");
  await writeFile(other, JSON.stringify({ name: "x", asOf: "2026-01-01", tables: {} }));
  expect(await faultsOf(other)).toEqual([
    'The table "boards" is missing: What the joiner buys. Add it.',
  ]);
});

test("the same book from .xlsx and .json has the same mark, another price another", async () => {
  const rows = [
    { code: "oak", unit: "ft", cost: 4.5, good_until: "2026-03-31", planed: false },
    { planed: true, good_until: "2026-12-31", cost: 0.1, unit: "each", code: "pine-2" },
  ];
  const content = { name: "Boards 2026", asOf: "2026-01-01", tables: { boards: rows } };
  const [json, xlsx] = [join(folder, "same.json"), join(folder, "same.xlsx")];
  await writeFile(json, JSON.stringify(content));
  const first = await readOfficeBook(json, layout);
  const bytes = await writeOfficeBook(first, layout);
  await writeFile(xlsx, bytes);
  const second = await readOfficeBook(xlsx, layout);
  expect(second).toEqual(first);
  expect(await writeOfficeBook(first, layout)).toEqual(bytes);
  const dearer = { ...content, tables: { boards: [{ ...rows[0], cost: 4.51 }, rows[1]] } };
  await writeFile(json, JSON.stringify(dearer));
  expect((await readOfficeBook(json, layout)).mark).not.toBe(first.mark);
});

test.each([
  ["boards.csv", "x", "its name must end in .xlsx or .json"],
  ["broken.json", "{", "is not valid JSON"],
  ["list.json", "[]", 'it must be one object with "name", "asOf" and "tables"'],
  ["rows.json", '{"tables": {"boards": {}}}', 'its table "boards" must be a list of objects'],
  ["text.xlsx", "code,cost", "text.xlsx"],
])("%s is refused", async (name, text, sentence) => {
  const path = join(folder, name);
  await writeFile(path, text);
  await expect(readOfficeBook(path, layout)).rejects.toThrow(sentence);
  expect(await readFile(path, "utf8")).toBe(text);
});
