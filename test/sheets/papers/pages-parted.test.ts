import { expect, test } from "vitest";
import { identityOf } from "../../../engine/book/identity-of.js";
import type { Value } from "../../../engine/formula/value.js";
import { columnOf, type Model } from "../../../engine/template/model.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { bidOf, demoJobs } from "../../support/demo.js";
import { type PageSetup, pageSetupOf } from "../../support/page-setup.js";

// Where the pages of Proposal and Walk end: behind a row of the sheet, so that each page holds what belongs together.

/** Points between the margins of a page of letter paper, which is lower than A4. */
const letter = (11 - 1.2) * 72;

/** Points that each page of a sheet takes on paper, from the first printed row on. */
function pagesOf({ scale, breaks, heights }: PageSetup, first: number, last: number): number[] {
  const ends = [...breaks, last];
  return ends.map((end, i) => {
    const from = i === 0 ? first : (ends[i - 1] as number) + 1;
    const points = heights.slice(from - 1, end).reduce((sum, height) => sum + height, 0);
    return (points * scale) / 100;
  });
}

const lineOf = (model: Model, name: string) => model.byId.get(name)?.line as number;
const bottomOf = (model: Model, name: string) =>
  Math.max(...model.placed.filter(({ sheet }) => sheet === name).map(({ bottom }) => bottom));

test.each(demoJobs())(
  "%s: what is built and its price stand on page one of two",
  async (file) => {
    const { bytes, model } = await bidOf(file);
    const setup = pageSetupOf(bytes, "Proposal");
    expect(setup.fits).toBe(false);
    expect(setup.breaks).toHaveLength(1);
    const [end = 0] = setup.breaks;
    expect(end).toBeGreaterThanOrEqual(lineOf(model, "proposal_price"));
    expect(end).toBeLessThan(columnOf(model, "proposal_rest", "line").cells[0]?.line as number);
    expect(setup.heights[end - 1]).toBeGreaterThan(0);
    expect(setup.scale).toBeGreaterThanOrEqual(74);
    for (const points of pagesOf(setup, 4, bottomOf(model, "Proposal"))) {
      expect(points).toBeLessThanOrEqual(letter);
    }
  },
  180_000,
);

test.each(demoJobs())(
  "%s: the walk takes two pages, and no table is cut",
  async (file) => {
    const { bytes, model } = await bidOf(file);
    const setup = pageSetupOf(bytes, "Walk");
    const [end = 0, ...more] = setup.breaks;
    expect(more).toEqual([]);
    const own = model.placed.filter(({ sheet }) => sheet === "Walk");
    expect(own.filter(({ top, bottom }) => top <= end && bottom > end)).toEqual([]);
    for (const points of pagesOf(setup, 1, bottomOf(model, "Walk"))) {
      expect(points).toBeGreaterThan(letter / 3);
      expect(points).toBeLessThanOrEqual(letter);
    }
  },
  180_000,
);

test.each(demoJobs())(
  "%s: the price stands on one page",
  async (file) => {
    const { bytes } = await bidOf(file);
    expect(pageSetupOf(bytes, "Price")).toMatchObject({ breaks: [], fits: false });
    expect(pageSetupOf(bytes, "Price").scale).toBeGreaterThanOrEqual(65);
  },
  180_000,
);

/** A bid whose lists on the proposal are as long as they may be. */
async function longBid(words: string): Promise<{ setup: PageSetup; model: Model }> {
  const loaded = await bidOf(demoJobs().find((file) => file.includes("hillside")) as string);
  const { model } = loaded;
  const values: Value[] = [...loaded.values];
  for (const flow of ["proposal_scope", "proposal_rest"]) {
    const { cells } = columnOf(model, flow, "line");
    for (const { index } of cells) values[index] = words;
    values[model.byId.get(`${flow}_count`)?.index as number] = cells.length;
  }
  const bytes = await writeWorkbook(model, values, identityOf(loaded));
  return { setup: pageSetupOf(bytes, "Proposal"), model };
}

test("lists too long for two pages go on to further ones, in letters as large as ever", async () => {
  const { setup, model } = await longBid("A line of the proposal as long as it may be. ".repeat(3));
  expect(setup.breaks.length).toBeGreaterThan(1);
  expect(setup.scale).toBe(88);
  const pages = pagesOf(setup, 4, bottomOf(model, "Proposal"));
  for (const points of pages) expect(points).toBeLessThanOrEqual(letter);
  // none but the last is left half empty
  for (const points of pages.slice(0, -1)) expect(points).toBeGreaterThan(letter / 2);
}, 180_000);
