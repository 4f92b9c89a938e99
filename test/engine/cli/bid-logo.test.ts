import { copyFile, mkdtemp, readFile, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { logoName } from "../../../engine/workbook/pictures/picture.js";
import { readPictures } from "../../../engine/workbook/pictures/read.js";
import { templates } from "../../../sheets/templates/index.js";
import { demoFolder } from "../../support/demo.js";
import { png } from "../../support/pictures.js";
import { spoken } from "../../support/spoken.js";

/** The picture that the office book names as its logo, from the book to the pages. */

const rillbook = (...args: string[]) => spoken(args, templates);

let folder: string;
const at = (name: string) => join(folder, name);

/** The demo's office book with a logo. */
async function bookWith(logo: string): Promise<void> {
  const book = JSON.parse(await readFile(join(demoFolder, "office-book.json"), "utf8"));
  book.tables.company.push({ rule: "company_logo", value: logo });
  await writeFile(at("office-book.json"), JSON.stringify(book));
}

const logosOf = async (name: string) =>
  readPictures(new Uint8Array(await readFile(at(name)))).pictures.filter(
    (one) => one.name === logoName,
  );

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-bid-logo-"));
  await copyFile(join(demoFolder, "garden-corner.json"), at("garden.json"));
  await writeFile(at("first.png"), png(10));
  await writeFile(at("second.png"), png(11));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test("a bid takes the logo from its book, keeps it as it is written again, and takes another one anew", async () => {
  await bookWith("first.png");
  const bid = at("bid.xlsx");
  expect((await rillbook("bid", at("garden.json"), "-o", bid)).status).toBe(0);
  const once = await logosOf("bid.xlsx");
  expect(once.length).toBeGreaterThan(4);
  expect(new Set(once.map(({ bytes }) => bytes.length))).toEqual(new Set([png(10).length]));
  // from the workbook alone: its book is not read
  await bookWith("second.png");
  expect((await rillbook("bid", bid)).status).toBe(0);
  expect(await logosOf("bid.xlsx")).toEqual(once);
  expect((await rillbook("bid", at("garden.json"), "-o", bid)).status).toBe(0);
  const anew = await logosOf("bid.xlsx");
  expect(anew.map(({ bytes }) => bytes)).toEqual(once.map(() => png(11)));
}, 180_000);

test("a change order has the logo of the job that it is made from", async () => {
  await bookWith("second.png");
  const record = JSON.parse(await readFile(at("garden.json"), "utf8"));
  record.inputs.falls[0].width = 4;
  await writeFile(at("wider.json"), JSON.stringify(record));
  const order = at("order.xlsx");
  await rillbook("compare", at("garden.json"), at("wider.json"), "--customer", "-o", order);
  const found = await logosOf("order.xlsx");
  expect(found.map(({ sheet, bytes }) => [sheet, bytes])).toEqual([["Change order", png(11)]]);
}, 180_000);

test("where the logo is missing no bid is written, and the check of the book says so first", async () => {
  await bookWith("third.png");
  const { status, err } = await rillbook("bid", at("garden.json"), "-o", at("none.xlsx"));
  expect(status).toBe(2);
  expect(err).toMatch(
    /logo-missing: .*third\.png, named by company_logo beside .*office-book\.json/,
  );
  await expect(stat(at("none.xlsx"))).rejects.toThrow();
  const checked = await rillbook("office", "check", at("office-book.json"));
  expect([checked.status, checked.err]).toEqual([2, expect.stringContaining("logo-missing")]);
}, 180_000);
