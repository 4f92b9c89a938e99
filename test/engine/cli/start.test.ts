import { mkdtemp, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { fillBook } from "../../../engine/book/fill.js";
import { starterBook } from "../../../engine/book/starter.js";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import type { Value } from "../../../engine/formula/value.js";
import { firstFields, openFields } from "../../../engine/job/missing.js";
import { newJob } from "../../../engine/job/start.js";
import { valuesAsGiven } from "../../../engine/job/values.js";
import { modelOf } from "../../../engine/template/models.js";
import { matchWorkbook } from "../../../engine/workbook/match/match.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { missingLines } from "../../../engine/workbook/write/summary-missing.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { templates } from "../../../sheets/templates/index.js";
import { waterfall } from "../../../sheets/templates/waterfall.js";
import { demoFolder } from "../../support/demo.js";
import { spoken } from "../../support/spoken.js";
import { typedOver } from "../../support/typed-over.js";

/** From nothing to a first price: as a record, and in a workbook. */

const model = modelOf(waterfall, "us");
const first = firstFields(model).map(({ id }) => id);

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-start-"));
});

const rillbook = (...args: string[]) => spoken(args, templates);

/** What a person types first, by the ids of the fields. */
const typed = {
  customer: "Invented customer",
  site: "1 Example Lane (invented)",
  estimator: "E. Estimator",
  bid_date: 46328,
  start_month: 5,
  "falls.width[1]": 2.5,
  "runs.length[1]": 6,
  "pipe_lines.pipe_size[1]": "2 in",
};

test("a first price takes nine fields at most, those of the walk before the decisions", () => {
  expect(first.length).toBeLessThanOrEqual(9);
  expect(new Set(first)).toEqual(new Set(Object.keys(typed)));
  expect(first.at(-1)).toBe("pipe_lines.pipe_size[1]");
});

/** A job in which all first fields are typed, but for what `changed` says of them. */
function begunJob(changed: Readonly<Record<string, Value>>): Value[] {
  const given = valuesAsGiven(model, newJob(model, "yard"));
  fillBook(model, given, starterBook(waterfall, "us"));
  for (const [of, value] of Object.entries({ ...typed, "falls.drop[1]": 2, ...changed })) {
    given[model.byId.get(of)?.index as number] = value;
  }
  return calculateFast(model, given) as Value[];
}

test.each([
  ["all of them", {}, true],
  ["a width in inches alone", { "falls.width[1]": null, "falls.width_plus[1]": 30 }, true],
  ["a length in inches alone", { "runs.length[1]": null, "runs.length_plus[1]": 90 }, true],
  ["no width at all", { "falls.width[1]": null }, false],
  ["no customer", { customer: null }, false],
] as const)("with %s, the job is described where no first field is open", (_, changed, is) => {
  const values = begunJob(changed);
  expect(values[model.byId.get("described")?.index as number]).toBe(is);
  expect(openFields(model, values).length === 0).toBe(is);
  expect(missingLines(model, values).every(({ value }) => value === "")).toBe(is);
});

test("Summary looks for the inches of a length too, and asks for its price what the template asks", async () => {
  const lines = missingLines(model, begunJob({})).map(({ formula }) => formula);
  const second = lines.filter((formula) => formula.startsWith("IF(AND(ISBLANK("));
  expect(second).toHaveLength(2);
  const bytes = await writeWorkbook(model, begunJob({}), {
    ...{ job: "yard", template: "waterfall", version: 1, units: "us" },
    ...{ book: "none", bookAsOf: "", bookMark: "" },
  });
  const [summary] = readWorkbook(bytes).sheets;
  const formulas = [...(summary?.cells.values() ?? [])].map(({ formula }) => formula ?? "");
  expect(formulas).toContain('IF(described,price,"–")');
}, 180_000);

test.each(first)("without %s nothing says a price, and no draw or chart holds money", (id) => {
  const given = valuesAsGiven(model, newJob(model, "yard"));
  fillBook(model, given, starterBook(waterfall, "us"));
  const put = (of: string, value: Value) => {
    given[model.byId.get(of)?.index as number] = value;
  };
  for (const [of, value] of Object.entries({ ...typed, "falls.drop[1]": 2 })) put(of, value);
  const money = () => {
    const values = calculateFast(model, given);
    const at = (of: string) => values[model.byId.get(of)?.index as number];
    const names = ["price", "contract_price", "draws.amount[1]", "price_breakdown.amount[1]"];
    return names.map(at);
  };
  for (const one of money()) expect(one).toBeGreaterThan(100);
  put(id, null);
  expect(money()).toEqual([0, 0, 0, 0]);
});

test("a drop that is missing is told where it is typed, and by one check alone", () => {
  const given = valuesAsGiven(model, newJob(model, "yard"));
  fillBook(model, given, starterBook(waterfall, "us"));
  for (const [of, value] of Object.entries(typed)) {
    given[model.byId.get(of)?.index as number] = value;
  }
  const values = calculateFast(model, given);
  const at = (of: string) => values[model.byId.get(of)?.index as number];
  const [told] = model.cells.filter(
    ({ index, sheet }) => sheet === "Walk" && String(values[index]).startsWith("← Drop"),
  );
  expect(told?.id).toMatch(/^falls\..*\[1\]$/);
  expect(at("falls.drop_given[1]")).toBe(false);
  expect(at("falls.has_drop[1]")).toBe(true);
  expect(at("pipe_lines.siphon_counted[1]")).toBe(true);
});

describe("a record", () => {
  test("holds what must be given alone, and a file that is there is left alone", async () => {
    const file = join(folder, "new.json");
    const { status, out } = await rillbook("start", file, "--job", "2027-014");
    expect(status).toBe(0);
    expect(out).toContain("Still missing, in the order of the walk:\n  Customer (customer, Walk!");
    const text = await readFile(file, "utf8");
    const record = JSON.parse(text);
    expect(record).toMatchObject({ job: "2027-014", template: "waterfall", units: "us" });
    expect(record.inputs.falls).toEqual([{ width: null }]);
    expect(record.guide["falls.width"]).toMatchObject({ unit: "ft" });
    expect(text.split("\n").length).toBeLessThan(100);
    const again = await rillbook("start", file);
    expect(again.status).toBe(2);
    expect(again.err).toMatch(/exists already/);
  });

  test("names the office book that is given, which must exist", async () => {
    const file = join(folder, "with-book.json");
    await rillbook("start", file, "--office", join(demoFolder, "office-book.json"));
    const { office } = JSON.parse(await readFile(file, "utf8"));
    expect(join(folder, office)).toBe(join(demoFolder, "office-book.json"));
    const none = await rillbook("start", join(folder, "other.json"), "--office", "none.xlsx");
    expect(none.err).toMatch(/^office-missing: /m);
  });
});

describe("a workbook", () => {
  /** A new workbook, made once by the program. */
  let empty: Uint8Array;
  beforeAll(async () => {
    const file = join(folder, "empty.xlsx");
    expect((await rillbook("start", file)).status).toBe(0);
    empty = new Uint8Array(await readFile(file));
  }, 60_000);

  test("is live with nothing filled in, turns into a bid in its place, and loses nothing", async () => {
    const file = join(folder, "yard.xlsx");
    const content = readWorkbook(empty);
    const errors = content.sheets.flatMap(({ name, cells }) =>
      [...cells].flatMap(([address, { value }]) =>
        typeof value === "object" && value !== null ? [`${name}!${address}`] : [],
      ),
    );
    expect(errors).toEqual([]);
    // what is typed brings rows into use on every sheet: none of them may be hidden
    expect(content.sheets.filter(({ hiddenRows }) => hiddenRows > 0)).toEqual([]);
    const onSummary = [...(content.sheets[0]?.cells.values() ?? [])];
    const links = onSummary.filter(({ formula }) => /^IF\((AND\()?ISBLANK\(/.test(formula ?? ""));
    expect(links.map(({ value }) => value)).toHaveLength(first.length);
    expect(links.every(({ value }) => value !== "")).toBe(true);

    await writeFile(file, typedOver(empty, model, { ...typed, walked_by: "A. Walker" }));
    const bid = await rillbook("bid", file);
    expect(bid.err).not.toContain("Still missing");
    expect(bid.status).toBe(1); // placeholder prices
    expect(bid.out).toMatch(/^Price +\$[1-9]/m);
    expect(bid.out).toMatch(
      /^falls\.width\[1\]: 2\.5 ft, was blank \(measured on site, by A\. Walker/m,
    );
    expect(bid.out).toMatch(
      /^pipe_lines\.pipe_size\[1\]: 2 in, was blank \(changed .*, by E\. Estimator/m,
    );
    const after = readWorkbook(new Uint8Array(await readFile(file)));
    const match = matchWorkbook(after, model);
    for (const [id, value] of Object.entries(typed)) {
      expect(match.at.get(id)?.cell.value).toBe(value);
    }
    // the prices of an office book, taken anew, keep what was typed
    const book = join(demoFolder, "office-book.json");
    const target = join(folder, "refreshed.xlsx");
    const refreshed = await rillbook("bid", file, "-o", target, "--office", book, "--json");
    const priced = JSON.parse(refreshed.out);
    expect(priced.failed.map(({ name }: { name: string }) => name)).not.toContain("prices_own");
    // once more, nothing is told that was told already
    expect(priced).toMatchObject({ missing: [], errors: [] });
    expect(priced.entries).toBeUndefined();
    const [, told = ""] = /^Price +\$(\S+)/m.exec(bid.out) ?? [];
    expect(priced.headline.price.value).not.toBe(Number(told.replaceAll(",", "")));
    const anew = await rillbook(
      "bid",
      target,
      "-o",
      join(folder, "anew.xlsx"),
      "--refresh-prices",
      "--json",
    );
    // it named no book of its own, so that the one given is named from then on
    expect(JSON.parse(anew.out).headline).toEqual(priced.headline);
    const unnamed = await rillbook("bid", file, "--refresh-prices");
    expect(unnamed.err).toMatch(/^office-missing: .*names no file.*--office <file>/);
    expect(JSON.parse(anew.out).missing).toEqual([]);
  });

  test("in place only where nothing but inputs was changed", async () => {
    const file = join(folder, "spoiled.xlsx");
    const spoiled = typedOver(empty, model, { total_cost: 1 });
    await writeFile(file, spoiled);
    const { status, err } = await rillbook("bid", file);
    expect(status).toBe(2);
    expect(err).toMatch(/^output-edited: .*total_cost.*Write the bid to another file with -o\.$/m);
    expect((await readFile(file)).equals(spoiled)).toBe(true);
    // named as its own output it is written in place as well
    const named = await rillbook("bid", file, "-o", file);
    expect([named.status, named.err]).toEqual([2, expect.stringMatching(/^output-edited: /)]);
    const whole = join(folder, "whole.xlsx");
    await writeFile(whole, empty);
    expect(await rillbook("bid", whole, "-o", join(folder, ".", "whole.xlsx"))).toMatchObject({
      status: 1,
      out: expect.stringContaining(`Written: ${whole}`),
    });
  });
});
