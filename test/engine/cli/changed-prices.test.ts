import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { afterAll, beforeAll, expect, test } from "vitest";
import { calculate } from "../../../engine/evaluate/calculate.js";
import { modelOf } from "../../../engine/template/models.js";
import type { Template } from "../../../engine/template/template.js";
import { matchWorkbook } from "../../../engine/workbook/match/match.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { fence, fenceBook, fenceGiven, fenceIdentity } from "../../support/fence.js";
import { spoken } from "../../support/spoken.js";
import { typedOver } from "../../support/typed-over.js";

/** The fence with a layout for the office book's file. */
const priced: Template = {
  ...fence,
  office: [
    {
      ...{ name: "items", sheet: "Items", means: "What is bought" },
      columns: [
        { key: "code", kind: "code", means: "Code", required: true },
        { key: "unit_price", kind: "number", means: "Price" },
        { key: "supplier", kind: "text", means: "Supplier" },
        { key: "good_until", kind: "date", means: "Last day" },
      ],
    },
  ],
};
const model = modelOf(priced, "us");
const price = "items.unit_price[1]";
const { name, asOf, tables } = fenceBook;
const bookFile = { name, asOf, tables };
let folder: string;
let bytes: Uint8Array;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-prices-"));
  bytes = await writeWorkbook(model, calculate(model, fenceGiven(model)), fenceIdentity(model));
  await writeFile(join(folder, "book.json"), JSON.stringify(bookFile));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Something other in the property that marks the prices. */
function unmarked(workbook: Uint8Array): Uint8Array {
  const parts = unzipSync(workbook);
  const part = "docProps/custom.xml";
  const before = strFromU8(parts[part] as Uint8Array);
  const after = before.replace(/(name="rillbook office mark"[^>]*><vt:lpwstr>)[0-9a-f]/, "$1x");
  if (after === before) throw new Error("The mark was not found.");
  return zipSync({ ...parts, [part]: strToU8(after) }, { level: 0 });
}

async function bid(workbook: Uint8Array, ...more: string[]) {
  await writeFile(join(folder, "old.xlsx"), workbook);
  const output = join(folder, "new.xlsx");
  await rm(output, { force: true });
  const paths = more.map((one) => (one.endsWith(".json") ? join(folder, one) : one));
  const told = await spoken(["bid", join(folder, "old.xlsx"), "-o", output, ...paths], [priced]);
  const written = await readFile(output).catch(() => undefined);
  const content = written && readWorkbook(written);
  const held = content && matchWorkbook(content, model).at.get(price)?.cell.value;
  return { ...told, held };
}

const given = () => fenceGiven(model)[model.byId.get(price)?.index ?? -1];

test.each<[string, () => Uint8Array, string[], RegExp]>([
  [
    "put back",
    () => typedOver(bytes, model, { [price]: 99 }),
    [],
    /^not taken in: \S+: \$99\.00; when the workbook was written it was \S+; that one stands in the new bid$/m,
  ],
  [
    "cleared, put back",
    () => typedOver(bytes, model, { [price]: "" }),
    [],
    /^not taken in: \S+: nothing; .*; that one stands in the new bid$/m,
  ],
  [
    "of the book given",
    () => typedOver(bytes, model, { [price]: 99 }),
    ["--office", "book.json"],
    /^not taken in: .*; the office book's price stands in the new bid$/m,
  ],
  ["untouched", () => bytes, [], /^/],
  ["of the book, whatever the mark", () => unmarked(bytes), ["--office", "book.json"], /^/],
])("a price that somebody changed in a workbook: %s", async (_, workbook, more, line) => {
  const { status, err, held } = await bid(workbook(), ...more);
  expect(held).toBe(given());
  expect(err).toMatch(line);
  expect([0, 1]).toContain(status);
});

test.each<[string, () => Uint8Array, RegExp]>([
  [
    "a price and the mark",
    () => unmarked(typedOver(bytes, model, { [price]: 99 })),
    /does not fit its mark, and 1 of the prices is not that list's either: \S+ is \$99\.00; .*--office <file>/s,
  ],
  ["the mark alone", () => unmarked(bytes), /does not fit its mark\. No bid is written/],
])("where nothing shows the prices, no bid: %s", async (_, workbook, sentence) => {
  const { status, err, held } = await bid(workbook());
  expect([status, held]).toEqual([2, undefined]);
  expect(err).toMatch(/^trail-broken: Nothing shows with which prices/);
  expect(err).toMatch(sentence);
});
