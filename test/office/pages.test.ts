import { execFileSync } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bidOf, demoFolder } from "../support/demo.js";
import { toPdf } from "./soffice.js";

// LibreOffice prints a whole bid: as few pages as each sheet should have, and none with a fault of layout.

/** The most pages that a sheet of the largest demo takes; those not named print nothing. */
const most: Readonly<Record<string, number>> = {
  ...{ Summary: 1, Walk: 2, Falls: 1, Stream: 1, Piping: 1, Pump: 1, Basin: 1, Liner: 1 },
  ...{ Stone: 1, Earthwork: 1, Labor: 1, Materials: 1, Price: 1, Proposal: 2, Orders: 6 },
  ...{ Crew: 3, "Hand-over": 1, Checks: 1 },
};

interface Printed {
  readonly sheet: string;
  readonly foot: string;
  readonly lines: readonly string[];
}

let folder: string;
let pages: readonly Printed[];
let headings: ReadonlySet<string>;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-office-pages-"));
  const { bytes, model } = await bidOf(join(demoFolder, "hillside-stream.json"));
  const file = join(folder, "bid.xlsx");
  await writeFile(file, bytes);
  const [pdf = ""] = await toPdf([file], folder);
  const text = execFileSync("pdftotext", ["-layout", pdf, "-"]).toString("utf8");
  pages = text.split("\f").slice(0, -1).map(printed);
  headings = new Set(model.placed.map(({ block }) => block.heading).filter(Boolean));
}, 180_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

function printed(page: string): Printed {
  const lines = page.split("\n").filter((line) => line.trim() !== "");
  const foot = lines.findLast((line) => /^\s*Job .*Page \d+\s*$/.test(line)) ?? "";
  // a label of a drawing low on the page may stand in the same line of the text
  const sheet = Object.keys(most).find((name) => new RegExp(`\\s{2}${name}\\s`).test(foot)) ?? "";
  return { sheet, foot, lines: lines.filter((line) => line !== foot).map((line) => line.trim()) };
}

test("each sheet keeps to its pages", () => {
  const found: Record<string, number> = {};
  for (const { sheet } of pages) found[sheet] = (found[sheet] ?? 0) + 1;
  const over = Object.entries(found).filter(([sheet, count]) => count > (most[sheet] ?? 0));
  expect(over).toEqual([]);
  expect(Object.keys(found)).toEqual(expect.arrayContaining(["Summary", "Price", "Proposal"]));
});

test("each page says which of its sheet it is", () => {
  const before: Record<string, number> = {};
  for (const { sheet, foot } of pages) {
    before[sheet] = (before[sheet] ?? 0) + 1;
    expect(foot).toMatch(new RegExp(`Page ${before[sheet]}\\s*$`));
  }
});

test("no page is blank, or holds a title alone", () => {
  const bare = pages.filter(({ lines }) => lines.length < 4);
  expect(bare).toEqual([]);
});

test("no heading stands alone at the foot of a page", () => {
  const stranded = pages.flatMap(({ sheet, lines }) => {
    const last = lines.at(-1) ?? "";
    return headings.has(last) ? [`${sheet}: ${last}`] : [];
  });
  expect(stranded).toEqual([]);
});

test("no figure is too wide for its column, and no error shows", () => {
  for (const { sheet, lines } of pages) {
    expect(lines.join("\n"), sheet).not.toMatch(/###|#N\/A|#REF|#VALUE|#NAME|#DIV/);
  }
});
