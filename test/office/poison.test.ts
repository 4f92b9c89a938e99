import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { addressOf } from "../../engine/address.js";
import { CellError, type ErrorCode, type Value } from "../../engine/formula/value.js";
import type { Cell } from "../../engine/template/model.js";
import type { CellValue } from "../../engine/workbook/read/content.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { bidOf, demoJobs } from "../support/demo.js";
import { cellsToPoison, figuresOf, Judgement } from "../support/poison.js";
import { Tampered } from "../support/tamper.js";
import { recalculateInGnumeric } from "./gnumeric.js";
import { recalculate } from "./soffice.js";

// The same as test/sheets/poison.test.ts, in programs that are not ours: workbooks with =1/0 in a cell or in a few
// that lie apart, since each load takes a program long. One cell at a time: POISON_STRIDE and POISON_ALONE=1.

const stride = Number(process.env.POISON_STRIDE ?? 7919);
const first = Number(process.env.POISON_FIRST ?? 17);
/** Through these an error once became a plausible number: a height of zero, a step without water. */
const always = [
  ["levels.height[2]", "items.cost[1]"],
  ["falls.level[1]"],
  ["pipe_lines.outlet_level[2]"],
];

const hillside = demoJobs().find((file) => file.includes("hillside")) as string;
const bid = await bidOf(hillside);
const alone = process.env.POISON_ALONE !== undefined;
/** The cells that stand in error together, a workbook each. */
const planted: readonly (readonly Cell[])[] = withStrided(
  always.map((ids) => ids.map((id) => bid.model.byId.get(id) as Cell)),
  cellsToPoison(bid.model, stride, first),
);

/** Cells at a stride beside those that are always tried, not with the level, of which nearly all is made. */
function withStrided(groups: readonly Cell[][], strided: readonly Cell[]): Cell[][] {
  if (alone) return [...groups.flat(), ...strided].map((cell) => [cell]);
  const middle = Math.ceil(strided.length / 2);
  const more = [strided.slice(0, middle), [], strided.slice(middle)];
  return groups.map((group, i) => [...group, ...(more[i] ?? [])]);
}
/** The sheets on which something is read of a bid and acted on. */
const readSheets = new Set(
  [...figuresOf(bid.model), bid.model.byId.get("bid_verdict") as Cell].map(({ sheet }) => sheet),
);

let folder: string;
let files: string[];
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-poison-"));
  const books = planted.map((cells) => {
    const book = new Tampered(bid.bytes, bid.model);
    for (const { id } of cells) book.cell(id, () => "<f>1/0</f><v>0</v>", "n");
    return book.bytes();
  });
  files = books.map((_, i) => join(folder, `planted-${i}.xlsx`));
  await Promise.all(books.map((book, i) => writeFile(files[i] as string, book)));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** The value of each figure, by index, as a program stored it. */
async function stored(file: string): Promise<(index: number) => Value> {
  const { sheets } = readWorkbook(new Uint8Array(await readFile(file)), {
    sheets: ({ name }) => readSheets.has(name),
  });
  const byName = new Map(sheets.map((sheet) => [sheet.name, sheet.cells]));
  return (index) => {
    const { sheet, column, line } = bid.model.cells[index] as Cell;
    return asValue(byName.get(sheet)?.get(addressOf(column, line))?.value ?? null);
  };
}

function asValue(value: CellValue): Value {
  if (typeof value === "object" && value !== null) return new CellError(value.error as ErrorCode);
  return value;
}

test.each([
  ["LibreOffice", recalculate],
  ["Gnumeric", recalculateInGnumeric],
] as const)(
  "in %s an error in cells makes no figure another figure",
  { timeout: 400_000 },
  async (program, run) => {
    const out = await run(files, join(folder, program));
    // that a program finds the same values where nothing is planted: stored-demos.ts
    const judgement = new Judgement(bid.model, bid.values);
    const faults: string[] = [];
    let inError = 0;
    for (const [i, [cell]] of planted.entries()) {
      const valueAt = await stored(out[i] as string);
      faults.push(...judgement.faults(cell as Cell, valueAt));
      if (valueAt(bid.model.byId.get("price")?.index as number) instanceof CellError) inError += 1;
    }
    expect(faults.slice(0, 20)).toEqual([]);
    expect(inError).toBeGreaterThan(2);
  },
);
