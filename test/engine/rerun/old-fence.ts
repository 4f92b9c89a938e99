import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { BookLayout } from "../../../engine/job/book-layout.js";
import type { PriceBook } from "../../../engine/job/price-book.js";
import type { JobRecord } from "../../../engine/job/record.js";
import type { RerunOptions } from "../../../engine/rerun/rerun.js";
import type { Trade } from "../../../engine/rerun/trade.js";
import {
  calc,
  input,
  type LinesBlock,
  money,
  type Template,
  template,
  text,
} from "../../../engine/template/index.js";
import { fence, fenceBook, fenceJob } from "../../support/fence.js";

const layout: BookLayout = [
  {
    name: "items",
    sheet: "Items",
    means: "What is bought.",
    columns: [
      { key: "code", kind: "code", means: "Code", required: true },
      { key: "unit_price", kind: "number", means: "Price in $" },
      { key: "supplier", kind: "text", means: "Supplier" },
      { key: "good_until", kind: "date", means: "Last day of the quote" },
    ],
  },
];

/** The template with other cells in the block of lines of that heading. */
function changed(from: Template, heading: string, cells: LinesBlock["cells"]): Template["sheets"] {
  return from.sheets.map((sheet) => ({
    ...sheet,
    blocks: sheet.blocks.map((block) =>
      block.kind === "lines" && block.heading === heading
        ? { ...block, cells: { ...block.cells, ...cells } }
        : block,
    ),
  }));
}

const roles = {
  price: "price",
  cost: "cost",
  contingency: "set_aside",
  sections: [
    { label: "Materials", name: "materials" },
    { label: "Labor", name: "labor" },
  ],
  goodUntil: "items.good_until",
};

const cost = calc(money, "materials+labor", "Cost");
const setAside = calc(money, "cost*0.05", "Contingency");

/** The invented fence as it was: with a colour, and labor at $75 a post. */
export const fenceThree = template({
  ...fence,
  prices: layout,
  roles,
  sheets: changed(fence, "Price", {
    cost,
    set_aside: setAside,
    colour: input(text, "Colour", { optional: true }),
    colour_shown: calc(text, 'colour&" paint"', "Paint"),
  }),
});

/** The next version: no colour, and labor by a rate. */
export const fenceFour = template({
  ...fence,
  version: 4,
  prices: layout,
  roles,
  sheets: changed(fence, "Price", {
    cost,
    set_aside: setAside,
    labor_rate: input(money, "Labor for a post", { default: 90, least: 0 }),
    labor: calc(money, "total_posts*labor_rate", "Labor"),
  }),
});

/** Next year's prices: posts cost more, and the quote for paint has ended. */
export const nextBook: PriceBook = {
  ...fenceBook,
  name: "next year",
  asOf: "2027-01-04",
  mark: "c".repeat(64),
  tables: {
    items: (fenceBook.tables.items ?? []).map((row) => ({
      ...row,
      ...(row.code === "post" ? { unit_price: 25 } : {}),
      ...(row.code === "paint" ? { good_until: "2026-02-01" } : {}),
    })),
  },
};

/** Next year's prices without boards. */
export const lackingBook: PriceBook = {
  ...nextBook,
  mark: "d".repeat(64),
  tables: { items: (nextBook.tables.items ?? []).filter(({ code }) => code !== "board") },
};

const books: Record<string, PriceBook> = {
  "old-book": fenceBook,
  "next-book": nextBook,
  "lacking-book": lackingBook,
};

/** The trade of the tests; its price books are told apart by the ends of their paths. */
export const fenceTrade: Trade = {
  templates: [fenceThree, fenceFour],
  readBook: async (path) => {
    const found = Object.entries(books).find(([name]) => path.endsWith(name));
    if (found === undefined) throw new Error(`no book ${path}`);
    return found[1];
  },
};

export const options = (
  named: readonly string[],
  more: Partial<RerunOptions> = {},
): RerunOptions => ({
  named,
  prices: "next-book",
  versions: "own",
  asOf: "2026-06-01",
  filters: [],
  sample: 0,
  resume: false,
  moved: false,
  workers: 0,
  ...more,
});

/** An empty folder that goes away with the test. */
export async function folder(): Promise<string> {
  const path = await mkdtemp(join(tmpdir(), "rillbook-test-"));
  onTestFinished(() => rm(path, { recursive: true, force: true }));
  return path;
}

/** Writes a job record named after its number. */
export async function writeJob(
  into: string,
  job: string,
  more: Partial<JobRecord> = {},
): Promise<string> {
  const path = join(into, `${job}.json`);
  const record = { ...fenceJob, job, prices: "old-book", ...more };
  await writeFile(path, JSON.stringify(record));
  return path;
}
