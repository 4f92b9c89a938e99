import { beforeAll, describe, expect, test } from "vitest";
import { loadJob } from "../../../engine/book/load-job.js";
import { valuesOf } from "../../../engine/book/values.js";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import type { Value } from "../../../engine/formula/value.js";
import { validateJob } from "../../../engine/job/validate.js";
import type { Cell, Model } from "../../../engine/template/model.js";
import { modelOf } from "../../../engine/template/models.js";
import { templates } from "../../../sheets/templates/index.js";
import { book, changedDemo, failingIn, shown } from "../../support/changed-demo.js";
import { demoJobs } from "../../support/demo.js";
import { inSi } from "../../support/in-si.js";

const units =
  "ft|feet|inch|inches|gal|gallons?|gpm|gph|yd|yards|tons?|lb|lbs|pounds?|Btu|mph|ft2|yd3|ft²|ft³|yd³|inHg|°F";
/** A US unit as a word of its own; `1 1/2 in` is the name of a pipe, see below. */
const foreign = new RegExp(
  `(?<![\\w-])(${units})(?![\\w-])|(cubic|square) (yard|foot|inch)|\\b(a|each|per) foot\\b|\\d ?in\\b(?! all\\b)`,
);

/** Nominal sizes of pipe are inches everywhere: `1-1/2 in` is a name, not a length. */
const nominal =
  /\b(\d-)?\d(\/\d)? in\b(?=( pipe| at the pump| \(our no\.|,|$| elbows|\.|: ))|(metric tons?)|square tee/g;
const hasForeign = (text: string): boolean => foreign.test(text.replaceAll(nominal, ""));

/** The copy of the office book and its units; a book may be of the other system. */
const ofTheBook = (cell: Cell) =>
  cell.declaration.kind === "book" ||
  /^items_|^items\./.test(cell.name) ||
  cell.name.startsWith("trade_units.");
/** Sources are quoted as they were published. */
const isSource = (cell: Cell) => /\.(source|origin)$/.test(cell.name);

describe("a job in SI", () => {
  test.each(templates)(
    "no label, note, sentence, choice or standing text of $name names a US unit",
    (one) => {
      const model = modelOf(one, "si");
      const found = new Set<string>();
      const look = (where: string, text: string | undefined) => {
        if (text !== undefined && hasForeign(text)) found.add(`${where}: ${text}`);
      };
      for (const sheet of model.sheets) {
        look(sheet.name, sheet.purpose);
        for (const block of sheet.blocks) {
          look(sheet.name, block.heading);
          if (block.kind === "text") for (const one of block.paragraphs) look(sheet.name, one);
          if (block.kind === "table") look(block.name, block.note);
        }
      }
      for (const { name, declaration } of model.cells) {
        look(name, declaration.label);
        look(name, declaration.note);
        if (declaration.kind === "check") look(name, declaration.sentence);
        if (declaration.kind === "input" && Array.isArray(declaration.choices)) {
          for (const one of declaration.choices as readonly string[]) look(name, one);
        }
      }
      expect([...found]).toEqual([]);
      expect(model.cells.map(({ unit }) => unit.name).filter(hasForeign)).toEqual([]);
    },
  );

  describe.each(demoJobs().map((file) => [file.split("/").at(-1) as string, file]))(
    "%s",
    (_, file) => {
      let model: Model;
      let values: readonly Value[];
      /** Orders name goods as the book does, which may be of the other system. */
      const withoutBook = (text: string) => {
        const calls = model.tables.get("items")?.columns.get("description")?.cells ?? [];
        const names = calls
          .map(({ index }) => String(values[index] ?? ""))
          .filter((one) => one !== "");
        return names
          .filter((one) => text.includes(one))
          .reduce((left, one) => left.replaceAll(one, ""), text);
      };
      beforeAll(async () => {
        const { model: own, job, book: used } = await loadJob(file, templates);
        model = modelOf(own.template, "si");
        const record = job.units === "si" ? job : validateJob(model, inSi(own, job), file);
        values = calculateFast(model, valuesOf(model, record, used));
      });

      test("no text on any sheet names a US unit, whatever the office book's", () => {
        const told = model.cells.filter(
          (cell) =>
            typeof values[cell.index] === "string" &&
            hasForeign(withoutBook(values[cell.index] as string)) &&
            !ofTheBook(cell) &&
            !isSource(cell),
        );
        expect(told.map(({ id, index }) => `${id}: ${values[index]}`)).toEqual([]);
      });

      test("goods and rates are counted in metric units, at the cost of the book", () => {
        const column = (table: string, key: string) =>
          (model.tables.get(table)?.columns.get(key)?.cells ?? []).map(
            ({ index }) => values[index] ?? null,
          );
        const at = column("materials", "at") as number[];
        const units = column("items", "unit");
        const book = at.map((row) => units[row - 1]);
        const [unit, bought, each, cost] = [
          column("materials", "unit"),
          column("materials", "order_quantity"),
          column("materials", "unit_cost"),
          column("materials", "cost"),
        ];
        const metric = file.includes("metric");
        const perFoot = unit.findIndex(
          (one, i) => one === "m" && book[i] === (metric ? "m" : "ft"),
        );
        expect(perFoot).toBeGreaterThan(-1);
        // 1 ft is 0.3048 m exactly: a book of $3.90 a foot is $12.795 a meter
        const itemCost = column("items", "cost")[(at[perFoot] as number) - 1] as number;
        expect(each[perFoot]).toBeCloseTo(itemCost / (metric ? 1 : 0.3048), 9);
        expect(cost[perFoot]).toBeCloseTo(Number(bought[perFoot]) * Number(each[perFoot]));
        expect(column("materials", "priced")).not.toContain(false);
        expect(column("used_rates", "sound")).not.toContain(false);
      });
    },
  );
});

describe("an office book in the other system's units", () => {
  /** The book with one item sold by another unit, at another cost. */
  const sold = (code: string, unit: string, costs: number) => ({
    ...book,
    tables: {
      ...book.tables,
      items: (book.tables.items ?? []).map((row) =>
        row.code === code ? { ...row, unit, cost: Number(row.cost) * costs, pack: 0.001 } : row,
      ),
    },
  });

  test("a metric price costs a US job the same", () => {
    const feet = changedDemo({}, { prices: sold("fill-pipe", "ft", 1) });
    const meters = changedDemo({}, { prices: sold("fill-pipe", "m", 1 / 0.3048) });
    expect(shown(meters, "materials_before_tax")).toBeCloseTo(
      shown(feet, "materials_before_tax") as number,
      1,
    );
    const reads = failingIn(meters);
    expect(reads.has("materials.priced")).toBe(false);
  });

  test("a price for what is measured otherwise is refused", () => {
    expect(failingIn(changedDemo({}, { prices: sold("fill-pipe", "roll", 1) }))).toContain(
      "materials.priced",
    );
  });

  test("a rate by the meter is read by the foot; by the piece it is refused", () => {
    const rated = (unit: string, value: number) => ({
      ...book,
      tables: {
        ...book.tables,
        rates: (book.tables.rates ?? []).map((row) =>
          row.code === "pipe-laid" ? { ...row, unit, value } : row,
        ),
      },
    });
    const feet = changedDemo({}, { prices: rated("ft/hour", 10) });
    const meters = changedDemo({}, { prices: rated("m/hour", 3.048) });
    expect(shown(meters, "man_hours")).toBeCloseTo(shown(feet, "man_hours") as number, 9);
    expect(failingIn(meters).has("used_rates.sound")).toBe(false);
    expect(failingIn(changedDemo({}, { prices: rated("each/hour", 10) }))).toContain(
      "used_rates.sound",
    );
  });
});
