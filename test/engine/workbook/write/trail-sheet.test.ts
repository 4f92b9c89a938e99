import { strFromU8, unzipSync } from "fflate";
import { beforeAll, expect, test } from "vitest";
import { calculate } from "../../../../engine/evaluate/calculate.js";
import { appended, headOf } from "../../../../engine/job/trail/chain.js";
import { inputsMark } from "../../../../engine/job/trail/inputs.js";
import { verifyTrail } from "../../../../engine/job/trail/verify.js";
import { calc, prose, sheet, template, text } from "../../../../engine/template/index.js";
import { modelOf } from "../../../../engine/template/models.js";
import { identityOfWorkbook } from "../../../../engine/workbook/match/identity.js";
import { readTrailSheet } from "../../../../engine/workbook/match/trail-sheet.js";
import type { WorkbookContent } from "../../../../engine/workbook/read/content.js";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity } from "../../../support/fence.js";

const model = modelOf(fence, "us");
const values = calculate(model, fenceGiven(model));
const time = "2026-03-04T05:06:07.089Z";
const trail = appended(
  [],
  [
    { time, by: "A", input: "height", old: 4, new: 5.5, unit: "ft", from: "measured on site" },
    {
      time,
      by: "B",
      input: "runs.label[1]",
      old: null,
      new: "north",
      unit: "",
      from: "drawing",
      note: "=sheet 2",
    },
    { time, by: "B", input: "runs.run[1]", old: 1 / 3, new: 60, unit: "ft", from: "drawing" },
    {
      time,
      by: "B",
      input: "bid_date",
      old: null,
      new: "2026-05-04",
      unit: "",
      from: "office rule",
    },
  ],
);
const identity = { ...fenceIdentity(model), trail, office: "prices.xlsx" };
let bytes: Uint8Array;
let content: WorkbookContent;

beforeAll(async () => {
  bytes = await writeWorkbook(model, values, identity);
  content = readWorkbook(bytes);
});

test("the sheet reads back as it was written, and its chain holds", () => {
  const read = readTrailSheet(content);
  expect(read?.faults).toEqual([]);
  expect(read?.entries).toEqual(trail);
  expect(verifyTrail(read?.entries ?? [], headOf(trail))).toEqual([]);
  expect(read?.written.get("runs.run[2]")).toBe(33.25);
  expect(read?.written.get("bid_date")).toBe("2026-05-04");
  expect(read?.written.get("items.unit_price[1]")).toBe(21.35);
  expect(read?.written.has("runs.run[4]")).toBe(false);
});

test("the properties name head, mark and office book", () => {
  expect(identityOfWorkbook(content)).toMatchObject({
    trailHead: headOf(trail),
    inputsMark: inputsMark(model, values),
    office: "prices.xlsx",
  });
});

test("each input stands with its origin", () => {
  const cells = content.sheets.find(({ name }) => name === "Trail")?.cells;
  const originOf = (id: string) => {
    const [address] =
      [...(cells ?? [])].find(([at, { value }]) => at[0] === "B" && value === id) ?? [];
    return cells?.get(address?.replace("B", "E") ?? "")?.value;
  };
  expect(originOf("height")).toBe("measured on site");
  expect(originOf("margin"), "a default, one of many on a line").toBeUndefined();
  expect(originOf("defaults")).toBe("template default");
  expect(originOf("customer")).toBe("not in the trail");
  expect(originOf("runs.run[1]"), "its value is no longer that of the entry").toBe(
    "not in the trail",
  );
  expect(originOf("items.code[1]")).toBeUndefined();
  expect(originOf("office rows")).toBe("office book");
});

test("the same job with the same trail gives the same bytes", async () => {
  expect(Buffer.from(await writeWorkbook(model, values, identity)).equals(bytes)).toBe(true);
});

test("a workbook without a trail says so", async () => {
  const plain = readWorkbook(await writeWorkbook(model, values, fenceIdentity(model)));
  expect(identityOfWorkbook(plain).trailHead).toBe("none");
  expect(readTrailSheet(plain)?.entries).toEqual([]);
});

test.each([
  ["F", 7, /cannot be read: by must be string/],
  ["G", "yesterday", /cannot be read: time must match/],
  ["E", "hearsay", /cannot be read: from must be equal to one of/],
])("an entry whose column %s is spoilt is told with its line", (column, value, sentence) => {
  const sheets = content.sheets.map((sheet) => {
    if (sheet.name !== "Trail") return sheet;
    const cells = new Map(sheet.cells);
    const line = [...cells].findLast(([at, one]) => at[0] === "B" && one.value === "bid_date")?.[0];
    cells.set(`${column}${line?.slice(1)}`, { value });
    return { ...sheet, cells };
  });
  expect(readTrailSheet({ ...content, sheets })?.faults).toEqual([expect.stringMatching(sentence)]);
});

test.each([
  ["with its trail", trail, `&L&8Job F-1, trail ${headOf(trail).slice(0, 12)}&C`],
  ["without one", [], undefined],
])("the foot of a page that asks for it names the trail: %s", async (_, entries, foot) => {
  const offered = prose("Price", { offered: calc(text, '"Price "&FIXED(price,2)', "Offered") });
  const offer = sheet("Offer", "For the customer.", [offered], { namesTrail: true });
  const withOffer = template({ ...fence, sheets: [...fence.sheets, offer] });
  const other = modelOf(withOffer, "us");
  const written = unzipSync(
    await writeWorkbook(other, calculate(other, fenceGiven(other)), {
      ...identity,
      trail: entries,
    }),
  );
  const feet = Object.entries(written)
    .filter(([name]) => name.startsWith("xl/worksheets/sheet"))
    .map(([, part]) => strFromU8(part).replaceAll("&amp;", "&"));
  const told = feet.filter((xml) => xml.includes(", trail "));
  expect(told.map((xml) => xml.includes(foot ?? "nowhere"))).toEqual(
    foot === undefined ? [] : [true],
  );
});
