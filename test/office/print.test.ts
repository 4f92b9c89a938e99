import { execFileSync } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { templates } from "../../sheets/templates/index.js";
import { bidOf, demoFolder } from "../support/demo.js";
import { spoken } from "../support/spoken.js";

// LibreOffice prints the papers: no more pages than they should have, nothing cut, each with what it is for.

let folder: string;
let bid: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-office-print-"));
  bid = join(folder, "bid.xlsx");
  await writeFile(bid, (await bidOf(join(demoFolder, "hillside-stream.json"))).bytes);
}, 120_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

const textOf = (page: string) =>
  execFileSync("pdftotext", ["-layout", join(folder, `bid-${page}.pdf`), "-"]).toString("utf8");
/** The texts of the pages, each ended by a form feed. */
const pagesOf = (page: string) => textOf(page).split("\f").slice(0, -1);

test("proposal on two pages, orders a page a supplier, a hand-over of one", async () => {
  const before = await readFile(bid);
  const { status, err } = await spoken(["print", bid], templates);
  expect(err).toBe("");
  expect(status).toBe(0);
  expect((await readFile(bid)).equals(before)).toBe(true);
  expect(pagesOf("proposal")).toHaveLength(2);
  expect(pagesOf("hand-over")).toHaveLength(1);
  expect(pagesOf("crew").length).toBeLessThanOrEqual(4);
  for (const page of ["proposal", "orders", "crew", "hand-over"]) {
    // no page without content, no figure cut
    for (const one of pagesOf(page)) expect(one.trim().length, page).toBeGreaterThan(200);
    expect(textOf(page), page).not.toMatch(/###|#N\/A|#REF|#VALUE/);
  }
  expect(textOf("proposal")).toMatch(/\$48,900|\$\d\d,\d{3}/);
  const orders = pagesOf("orders");
  const suppliers = orders.map((one) => /^(Demo [a-z ]+?)\s{2,}|^(Demo [a-z ]+)$/m.exec(one)?.[0]);
  expect(new Set(suppliers.map((one) => one?.trim())).size).toBe(orders.length);
  expect(orders.length).toBeGreaterThan(3);
}, 240_000);
