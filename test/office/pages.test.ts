import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { bidOf, demoJobs } from "../support/demo.js";
import { fenceModel, fenceWorkbook } from "../support/fence-bid.js";
import {
  cutWords,
  linesOf,
  overlapping,
  type PrintedPage,
  printedPages,
  sheetOf,
  tokensOf,
} from "../support/printed-words.js";
import { missingTexts } from "../support/shown-texts.js";
import { Tampered } from "../support/tamper.js";
import { toPdf } from "./soffice.js";

// LibreOffice prints whole bids: as few pages as each sheet should have, none with a fault of layout, and every
// word that a cell shows stands on its page whole.

/** The most pages that a sheet of the largest demo takes; those not named print nothing. */
const most: Readonly<Record<string, number>> = {
  ...{ Summary: 1, Walk: 2, Falls: 1, Stream: 1, Piping: 1, Pump: 1, Basin: 1, Liner: 1 },
  ...{ Stone: 1, Earthwork: 1, Labor: 1, Materials: 1, Price: 1, Proposal: 2, Orders: 6 },
  ...{ Crew: 3, "Hand-over": 1, Checks: 1 },
};
const largest = "hillside-stream";

const jobs = demoJobs().map((job): [string, string] => [basename(job, ".json"), job]);
const whole = "fence";
const narrowed = "fence-narrowed";

let folder: string;
const printed = new Map<string, readonly PrintedPage[]>();
const pagesOf = (name: string) => printed.get(name) as readonly PrintedPage[];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-office-pages-"));
  const fence = await fenceWorkbook();
  const narrow = new Tampered(fence, fenceModel).sheet("Runs", (xml) =>
    xml.replaceAll(/(<col [^>]*?width=")[^"]*/g, "$13"),
  );
  const files = new Map([
    [whole, fence],
    [narrowed, narrow.bytes()],
  ]);
  for (const [name, job] of jobs) files.set(name, (await bidOf(job)).bytes);
  const paths = [...files.keys()].map((name) => join(folder, `${name}.xlsx`));
  const books = [...files.values()];
  for (const [i, path] of paths.entries()) await writeFile(path, books[i] as Uint8Array);
  const pdfs = await toPdf(paths, join(folder, "printed"));
  for (const [i, name] of [...files.keys()].entries()) {
    printed.set(name, printedPages(pdfs[i] as string));
  }
}, 300_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Words cut at the edge of their cell, or over one another; figures too wide for their column; errors. */
const faults = (pages: readonly PrintedPage[]): string[] =>
  pages.flatMap((page) => {
    const on = sheetOf(page)?.sheet ?? "a page without a foot";
    const torn = page.words.filter(({ text }) => /##|#N\/A|#REF|#VALUE|#NAME|#DIV/.test(text));
    return [
      ...torn.map(({ text }) => `${on}: ${text}`),
      ...cutWords(page).map(({ text, left, top }) => `${on}: ${text} cut at ${left}, ${top}`),
      ...overlapping(page).map(([one, other]) => `${on}: ${one.text} over ${other.text}`),
    ];
  });

describe.each(jobs)("%s", (name, job) => {
  test("no word is cut, none lies over another, no figure is too wide, no error shows", () => {
    expect(faults(pagesOf(name))).toEqual([]);
  });

  test("every word that a cell shows is on a page of its sheet", async () => {
    const content = readWorkbook((await bidOf(job)).bytes, { look: true });
    const missing = content.sheets.flatMap((sheet) => {
      const pages = pagesOf(name).filter((page) => sheetOf(page)?.sheet === sheet.name);
      const words = pages.flatMap((page) => page.words.flatMap(({ text }) => tokensOf(text)));
      return pages.length === 0 ? [] : missingTexts(content, sheet, words);
    });
    expect(missing).toEqual([]);
  });

  test("nothing stands in the margins", () => {
    // the least margin of a sheet is 0.45 in, the foot stands 0.3 in above the edge
    const [aside, above] = [0.44 * 72, 0.28 * 72];
    for (const page of pagesOf(name)) {
      const beyond = page.words.filter(
        ({ left, right, top, bottom }) =>
          left < aside || right > page.wide - aside || top < above || bottom > page.high - above,
      );
      expect(beyond, sheetOf(page)?.sheet).toEqual([]);
    }
  });

  test("each page says which of its sheet it is", () => {
    const before: Record<string, number> = {};
    for (const page of pagesOf(name)) {
      const { sheet = "", place } = sheetOf(page) ?? {};
      before[sheet] = (before[sheet] ?? 0) + 1;
      expect([sheet, place]).toEqual([sheet, before[sheet]]);
    }
  });

  test("no page is blank, or holds a title alone", () => {
    const bare = pagesOf(name).flatMap((page) => {
      const { sheet, place = 1 } = sheetOf(page) ?? {};
      // a sheet begins with title and purpose, which alone are no page; the foot is a line too
      const few = linesOf(page).length < (place === 1 ? 5 : 3);
      return few ? [`${sheet}, page ${place}`] : [];
    });
    expect(bare).toEqual([]);
  });

  test("no heading stands alone at the foot of a page", async () => {
    const { placed } = (await bidOf(job)).model;
    const headings = new Set(placed.map(({ block }) => block.heading).filter(Boolean));
    const stranded = pagesOf(name).flatMap((page) => {
      const last = linesOf(page).at(-2) ?? "";
      return headings.has(last) ? [`${sheetOf(page)?.sheet}: ${last}`] : [];
    });
    expect(stranded).toEqual([]);
  });
});

test.each(jobs.map(([name]) => name))(
  "the proposal of %s has two pages, what it builds and its price on the first",
  (name) => {
    const proposal = pagesOf(name).filter((page) => sheetOf(page)?.sheet === "Proposal");
    expect(proposal.length).toBe(2);
    const [first = [], second = []] = proposal.map(linesOf);
    for (const said of [
      /^What we will build|^■ What we will build/,
      /^The price for all of this/,
    ]) {
      expect(first.some((line) => said.test(line))).toBe(true);
    }
    expect(second[0]).toMatch(/Payments$/);
  },
);

test("each sheet of the largest demo keeps to its pages", () => {
  const found: Record<string, number> = {};
  for (const page of pagesOf(largest)) {
    const { sheet = "" } = sheetOf(page) ?? {};
    found[sheet] = (found[sheet] ?? 0) + 1;
  }
  const over = Object.entries(found).filter(([sheet, count]) => count > (most[sheet] ?? 0));
  expect(over).toEqual([]);
  expect(Object.keys(found)).toEqual(expect.arrayContaining(["Summary", "Price", "Proposal"]));
});

test.each([
  ["garden-corner", 3],
  ["side-yard", 3],
  ["metric-terrace", 3],
  [largest, 3],
])("the crew's pages of %s are %i, the tables to set out all on the first", (name, count) => {
  const crew = pagesOf(name).filter((page) => sheetOf(page)?.sheet === "Crew");
  expect(crew.length).toBe(count);
  const [first = [], ...others] = crew.map(linesOf);
  const heads = [/^Lip Tape/, /^Line from the manifold/, /^Run, its bed/];
  for (const head of heads) {
    expect(
      first.some((line) => head.test(line)),
      String(head),
    ).toBe(true);
    expect(
      others.flat().some((line) => head.test(line)),
      String(head),
    ).toBe(false);
  }
  // the blanks to be signed on stand on one line, two days a line
  const day = /^(Name _+ Date _+ Signs: yes \/ no ?){2}$/;
  const signed = first.filter((line) => /Name _+|Date _+|Signs: yes/.test(line));
  expect(signed.every((line) => day.test(line))).toBe(true);
  expect(signed.length).toBe(3);
});

test("columns made narrow are found: words cut, figures too wide", () => {
  expect(faults(pagesOf(whole))).toEqual([]);
  const found = faults(pagesOf(narrowed));
  expect(found).toEqual(expect.arrayContaining([expect.stringMatching(/^Runs: .*##/)]));
  expect(found).toEqual(expect.arrayContaining([expect.stringMatching(/^Runs: .* cut at /)]));
});
