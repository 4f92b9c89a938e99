import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { OfficeBook } from "../../../engine/book/office-book.js";
import { readOfficeBook } from "../../../engine/book/read.js";
import { writeOfficeBook } from "../../../engine/book/write.js";
import type { BookRow } from "../../../engine/template/book-layout.js";
import { layoutOf } from "../../../engine/template/office-layout.js";
import { waterfall } from "../../../sheets/templates/waterfall.js";
import { demoFolder } from "../../support/demo.js";

const layout = layoutOf(waterfall);
const demos = [
  ["us", "office-book.json", "F"],
  ["si", "office-book-metric.json", "C"],
] as const;

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-places-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** The book as its own workbook gives it back. */
async function throughWorkbook(book: OfficeBook, name: string): Promise<OfficeBook> {
  const file = join(folder, `${name}.xlsx`);
  await writeFile(file, await writeOfficeBook(book, layout(book.units ?? "us")));
  return readOfficeBook(file, layout);
}

describe.each(demos)("places and machines in an office book kept in %s", (units, file, scale) => {
  const ofDemo = () => readOfficeBook(join(demoFolder, file), layout);

  /** The demo's book with a change of the first row of a table. */
  const changed = async (table: string, change: BookRow): Promise<OfficeBook> => {
    const book = await ofDemo();
    const [first, ...rest] = book.tables[table] ?? [];
    return { ...book, tables: { ...book.tables, [table]: [{ ...first, ...change }, ...rest] } };
  };

  test("come back from its workbook as they were", async () => {
    const book = await ofDemo();
    expect(book.units ?? "us").toBe(units);
    expect(book.tables.places?.[0]?.temperature_scale).toBe(scale);
    const back = await throughWorkbook(book, `whole-${units}`);
    expect(back.tables.places).toEqual(book.tables.places);
    expect(back.tables.machines).toEqual(book.tables.machines);
  });

  test.each<[string, string, BookRow, RegExp]>([
    [
      "a storm below nothing",
      "places",
      { design_rain: -1 },
      /Places.*row \d+.*design_rain \([A-Z]+\d+\)/,
    ],
    [
      "a scale that is none",
      "places",
      { temperature_scale: "K" },
      /temperature_scale \([A-Z]+\d+\).*F, C/,
    ],
    ["a month of 40 days of rain", "places", { rain_apr: 40 }, /rain_apr \([A-Z]+\d+\)/],
    [
      "a machine's chart that nobody copied",
      "machines",
      { chart_copied: false },
      /Machines.*row \d+.*was copied/,
    ],
  ])("%s is told by sheet, row and cell", async (name, table, change, told) => {
    const book = await changed(table, change);
    await expect(throughWorkbook(book, name.replaceAll(" ", "-"))).rejects.toThrow(told);
  });
});
