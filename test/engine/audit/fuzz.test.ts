import fc from "fast-check";
import { expect, test } from "vitest";
import { auditWorkbook } from "../../../engine/audit/audit.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { WorkbookRefused } from "../../../engine/workbook/read/refused.js";
import { fence, fenceBook } from "../../support/fence.js";
import { fenceModel, fenceWorkbook } from "../../support/fence-bid.js";
import { Tampered } from "../../support/tamper.js";

// Workbooks mutated at random, at the level of XML: an audit ends, with findings or with a refusal.

const clean = await fenceWorkbook();
const parts = new Tampered(clean, fenceModel)
  .partNames()
  .filter((name) => /worksheets\/sheet|workbook\.xml$|custom\.xml|sharedStrings/.test(name));

/** What is put in place of a number, a word or a piece of the XML. */
const strange = [
  "",
  "0",
  "-1",
  "1e308",
  "1E400",
  "NaN",
  "99999999999999999999",
  "#REF!",
  "TRUE",
  "_x0000_",
  "A1:XFD1048576",
  "SUM(",
  "((((",
  "IF(1,2,3)",
  "'",
  "&quot;",
  "Site!A1",
  "runs.run",
  "waterfall",
  "\u{1f9f1}",
];

const mutation = fc.record({
  part: fc.constantFrom(...parts),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  way: fc.constantFrom("value", "formula", "cell", "row", "attribute", "swap", "cut"),
  text: fc.constantFrom(...strange),
});

type Mutation = typeof mutation extends fc.Arbitrary<infer T> ? T : never;

const patterns: Record<string, RegExp> = {
  value: /(?<=<(?:v|t)>)[^<]*/g,
  formula: /(?<=<f>)[^<]*/g,
  cell: /<c [^>]*?(?:\/>|>.*?<\/c>)/g,
  row: /<row .*?<\/row>/g,
  attribute: /(?<=[A-Za-z]=")[^"]*/g,
  cut: /[A-Za-z0-9.]+/g,
};

function mutate(xml: string, { at, way, text }: Mutation): string {
  const found = [...xml.matchAll(patterns[way === "swap" ? "value" : way] ?? /<v>/g)];
  const one = found[Math.floor(at * (found.length - 1))];
  if (one === undefined) return xml;
  const other = found[(found.indexOf(one) * 7 + 3) % found.length];
  const put = way === "swap" ? (other?.[0] ?? "") : way === "cell" || way === "row" ? "" : text;
  return xml.slice(0, one.index) + put + xml.slice(one.index + one[0].length);
}

test("250 mutated workbooks: no crash, no hang, no finding without words", {
  timeout: 120_000,
}, async () => {
  let refused = 0;
  let unclean = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(mutation, { minLength: 1, maxLength: 2 }), async (mutations) => {
      const book = new Tampered(clean, fenceModel);
      for (const one of mutations) book.put(one.part, mutate(book.text(one.part), one));
      try {
        const audit = await auditWorkbook(readWorkbook(book.bytes()), [fence], { book: fenceBook });
        if (!audit.clean) unclean += 1;
        for (const { found, expected } of audit.findings) {
          expect(`${found}${expected}`).not.toMatch(/\[object|undefined/);
        }
      } catch (error) {
        expect(error).toBeInstanceOf(WorkbookRefused);
        refused += 1;
      }
    }),
    { numRuns: 250, seed: 5 },
  );
  expect(unclean).toBeGreaterThan(60);
  expect(refused).toBeGreaterThan(5);
});
