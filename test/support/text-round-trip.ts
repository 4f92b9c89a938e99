import { deepStrictEqual } from "node:assert/strict";
import fc from "fast-check";
import { auditWorkbook } from "../../engine/audit/audit.js";
import { checkBook } from "../../engine/book/check.js";
import { valuesOf } from "../../engine/book/values.js";
import { calculate } from "../../engine/evaluate/calculate.js";
import { JobError } from "../../engine/job/job-error.js";
import { appended } from "../../engine/job/trail/chain.js";
import { oneLine } from "../../engine/job/trail/entry.js";
import { validateJob } from "../../engine/job/validate.js";
import { takeWorkbook } from "../../engine/take/take.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { fence, fenceBook, fenceIdentity, fenceJob } from "./fence.js";
import { fenceModel } from "./fence-bid.js";

// Any text is either refused on its way in, or a fresh bid that holds it audits clean and gives it back.

const taker = { by: "Office", time: "2026-06-01T10:00:00.000Z" };

/** Pieces that files, terminals and formulas treat in their own way. */
const pieces = [
  "_x000D_",
  "_x005F_",
  "_x0041_x0042_",
  "_",
  "x000d_",
  "\r\n",
  "\r",
  "\n",
  "\t",
  " ",
  "\u000b",
  "\u0000",
  "\u001b[2J",
  "\u0085",
  "\u00a0",
  "\u2028",
  "\u202e",
  "\u200b",
  "\ufeff",
  "\ufffe",
  "\ud83e",
  "\udea8",
  "🪨",
  "é",
  "e\u0301",
  "ß",
  "İ",
  "=1+1",
  "+1",
  "@x",
  "'",
  '"',
  "&amp;",
  "<v>",
  "]]>",
  "{name}",
  "‹a|b›",
  "&P",
  "TRUE",
  "#REF!",
  "1e5",
  "2026-01-01",
  "~",
  "*",
  "north",
] as const;
const strange = fc
  .array(fc.oneof(fc.constantFrom(...pieces), fc.string({ unit: "binary", maxLength: 4 })), {
    minLength: 1,
    maxLength: 5,
  })
  .map((parts) => parts.join(""));

export interface Texts {
  job: string;
  about: string;
  customer: string;
  label: string;
  supplier: string;
  by: string;
  note: string;
}
const texts: fc.Arbitrary<Texts> = fc.record({
  job: strange,
  about: strange,
  customer: strange,
  label: strange,
  supplier: strange,
  by: strange,
  note: strange,
});
/** Of those parts, one is tried at a time and all together now and then. */
export const someTexts = fc
  .tuple(texts, fc.constantFrom(...Object.keys(fenceParts()), "all"))
  .map(
    ([all, part]): Texts =>
      part === "all" ? all : { ...fenceParts(), [part]: all[part as keyof Texts] },
  );

export function fenceParts(): Texts {
  const [job, about, customer, label] = ["F-1", "invented", "Customer One", "north"];
  return { job, about, customer, label, supplier: "Supplier A", by: "Estimator A", note: "why" };
}

function rawBook(supplier: string) {
  return {
    ...{ name: fenceBook.name, asOf: fenceBook.asOf, about: null },
    tables: Object.fromEntries(
      Object.entries(fenceBook.tables).map(([name, rows]) => [
        name,
        { rows: rows.map((cells, i) => ({ at: i + 1, cells: { ...cells, supplier } })) },
      ]),
    ),
    where: () => "sheet Items",
  };
}
const column = (key: string, kind: "text" | "code" | "number" | "date", required = false) => ({
  ...{ key, kind, required, means: key },
});
const layout = [
  {
    ...{ name: "items", sheet: "Items", means: "what is bought" },
    columns: [
      column("code", "code", true),
      column("unit_price", "number"),
      column("supplier", "text"),
      column("good_until", "date"),
    ],
  },
];

/** Writes a bid of the invented fence job with these texts, audits it and takes it back. Throws where it is not what it was. */
export async function roundTrip(texts: Texts): Promise<"refused" | "kept"> {
  const { job, about, customer, label, supplier } = texts;
  const by = oneLine(texts.by);
  const note = oneLine(texts.note) || undefined;
  const [run, ...others] = fenceJob.inputs.runs as object[];
  const runs = [{ ...run, label }, ...others];
  const change = {
    ...{ ...taker, by, input: "customer", old: null, unit: "" },
    ...(note === undefined ? {} : { note }),
  };
  let record: ReturnType<typeof validateJob>;
  let book: typeof fenceBook;
  let given: ReturnType<typeof valuesOf>;
  try {
    const first = { ...fenceJob, job, about, inputs: { ...fenceJob.inputs, customer, runs } };
    record = validateJob(fenceModel, first, "a");
    const said = record.inputs.customer as string;
    const trail = appended([], [{ ...change, new: said === "" ? null : said, from: "drawing" }]);
    record = validateJob(fenceModel, { ...record, trail }, "a");
    book = checkBook(rawBook(supplier), layout, "book").book;
    given = valuesOf(fenceModel, record, book);
  } catch (error) {
    if (error instanceof JobError) return "refused";
    throw error;
  }
  const bytes = await writeWorkbook(fenceModel, calculate(fenceModel, given), {
    ...fenceIdentity(fenceModel),
    ...{ job: record.job, about: record.about as string, trail: record.trail ?? [] },
    ...{ book: book.name, bookMark: book.mark },
  });
  const content = readWorkbook(bytes);
  const { findings } = await auditWorkbook(content, [fence], { book });
  deepStrictEqual(
    findings.filter(({ grade, code }) => grade !== "to know" && code !== "check-failed"),
    [],
  );
  const taken = takeWorkbook(content, [fence], "a.xlsx", taker, { record, file: "a.json" });
  deepStrictEqual(taken.entries, []);
  deepStrictEqual(taken.findings, []);
  deepStrictEqual(taken.job, record);
  deepStrictEqual(takeWorkbook(content, [fence], "a.xlsx", taker).job.about, record.about);
  return "kept";
}
