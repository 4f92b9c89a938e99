import { copyFile, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { auditWorkbook } from "../../engine/audit/audit.js";
import { recalculated } from "../../engine/audit/recalculate.js";
import { run } from "../../engine/cli/run.js";
import { modelOf } from "../../engine/template/models.js";
import { matchWorkbook } from "../../engine/workbook/match/match.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { templates } from "../../sheets/templates/index.js";
import { waterfall } from "../../sheets/templates/waterfall.js";
import { bidOf, demoFolder } from "../support/demo.js";
import { typedOver } from "../support/typed-over.js";

/** A value of each kind, typed into the sheets of a demo whose record names its office book. */
const typed = {
  main_length: 40,
  look_wanted:
    "A quiet sheet over one lip, wide enough to be seen from the porch, with planted banks and a bench where the path comes down from the house.",
  "falls.width[1]": 2.4,
  basin_length: 9,
  "stones.stone_length[1]": 2.5,
  energy_rate: 0.22,
  "stones.fullness[1]": 0.8,
};

const model = modelOf(waterfall, "us");
let folder = "";
const at = (name: string) => join(folder, name);

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-taken-"));
  for (const name of ["garden-corner.json", "office-book.json"]) {
    await copyFile(join(demoFolder, name), at(name));
  }
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function rillbook(...args: string[]): Promise<string> {
  let told = "";
  const add = (text: string) => {
    told += text;
  };
  await run(args, templates, { out: add, err: add });
  return told;
}

const look = async (name: string) => readWorkbook(await readFile(at(name)), { look: true });
/** What the sheet shows for the price once it is calculated. */
function priceIn(content: Awaited<ReturnType<typeof look>>): unknown {
  const subject = { content, model, match: matchWorkbook(content, model) };
  return recalculated(subject, new Set()).followed[model.byId.get("price")?.index as number];
}
const accused = async (name: string) =>
  (await auditWorkbook(await look(name), templates)).findings
    .filter(({ grade }) => grade !== "to know")
    .map(({ code, where, found }) => `${code} ${where}: ${found}`);

test("values of every kind, typed into a bid and taken into its own record, give the bid that the sheet showed", {
  timeout: 180_000,
}, async () => {
  // the demo's bid as it is written for all tests, where its record names the same book
  const { bytes } = await bidOf(join(demoFolder, "garden-corner.json"));
  await writeFile(at("bid.xlsx"), typedOver(bytes, model, typed));
  const shown = priceIn(await look("bid.xlsx"));
  expect((await accused("bid.xlsx")).filter((one) => one.startsWith("look"))).toEqual([]);
  const taken = await rillbook("take", at("bid.xlsx"), "-o", at("garden-corner.json"), "--by", "A");
  expect(taken).toContain(`(${Object.keys(typed).length} changes)`);
  await rillbook("bid", at("garden-corner.json"), "-o", at("again.xlsx"));
  expect(await accused("again.xlsx")).toEqual([]);
  const again = await look("again.xlsx");
  expect(priceIn(again)).toBe(shown);
  const { at: places } = matchWorkbook(again, model);
  for (const [id, value] of Object.entries(typed)) {
    expect([id, places.get(id)?.cell.value]).toEqual([id, value]);
  }
});
