import { expect, test } from "vitest";
import { auditWorkbook } from "../../../engine/audit/audit.js";
import { valuesOf } from "../../../engine/book/values.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import { compile } from "../../../engine/template/compile.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { charted } from "../../support/charted.js";
import { Tampered } from "../../support/tamper.js";
import { toyBook, toyIdentity, toyJob } from "../../support/toy.js";

const model = compile(charted, "us");
const values = calculate(model, valuesOf(model, toyJob, toyBook));
const clean = await writeWorkbook(model, values, toyIdentity);

async function told(bytes: Uint8Array): Promise<string[]> {
  const content = readWorkbook(bytes, { look: true });
  const { findings } = await auditWorkbook(content, [charted], { book: toyBook });
  return findings
    .filter(({ code }) => code === "drawn")
    .map(({ where, found }) => `${where}: ${found}`);
}

/** The part of the chart with this title. */
function partOf(book: Tampered, title: string): string {
  const parts = book.partNames().filter((name) => /^xl\/charts\/chart\d+\.xml$/.test(name));
  return parts.find((name) => book.text(name).includes(`<a:t>${title}</a:t>`)) as string;
}

const edited = (title: string, edit: (xml: string) => string): Uint8Array => {
  const book = new Tampered(clean, model);
  return book.change(partOf(book, title), edit).bytes();
};

test("the charts of an unchanged workbook are no finding", async () => {
  expect(await told(clean)).toEqual([]);
});

const curve = "Beds &amp; edging";
const reference = (xml: string, tag: string, place: number): string =>
  [...xml.matchAll(new RegExp(`<c:${tag}>.*?<c:f>(.*?)</c:f>`, "g"))][place]?.[1] as string;

test.each<[what: string, title: string, edit: (xml: string) => string, found: RegExp]>([
  [
    "a series pointed elsewhere",
    curve,
    (xml) => xml.replace(reference(xml, "yVal", 0), reference(xml, "xVal", 0)),
    /^sheet Charts: a chart draws wide: workings!(\S+), workings!\1$/,
  ],
  [
    "points across and up exchanged",
    curve,
    (xml) => {
      const [x, y] = [reference(xml, "xVal", 0), reference(xml, "yVal", 0)];
      return xml.replace(x, "@").replace(y, x).replace("@", y);
    },
    /^sheet Charts: a chart draws wide: beds!/,
  ],
  [
    "a series under another name",
    "Soil",
    (xml) => xml.replace("<c:v>So far</c:v>", "<c:v>Needed</c:v>"),
    /^sheet Bars: a chart draws needed: /,
  ],
  [
    "a point named by another cell",
    curve,
    (xml) => xml.replace(reference(xml, "tx", 2), reference(xml, "tx", 3)),
    /^sheet Charts: a chart draws \S+, \S+, beds!/,
  ],
  [
    "a series taken out",
    "Soil",
    (xml) => xml.replace(/<c:ser>.*?<\/c:ser>/, ""),
    /^sheet Bars: a chart draws fewer cells/,
  ],
  [
    "another title",
    "Soil",
    (xml) => xml.replace("<a:t>Soil</a:t>", "<a:t>Loam</a:t>"),
    /^sheet Bars: a chart or an axis is titled Loam/,
  ],
  [
    "an axis cut",
    "Soil",
    (xml) =>
      xml.replace(
        '<c:orientation val="minMax"/></c:scaling>',
        '<c:orientation val="minMax"/><c:min val="1"/></c:scaling>',
      ),
    /^sheet Bars: an axis is cut at its min 1/,
  ],
  [
    "an axis that runs backwards",
    "Soil",
    (xml) => xml.replace('<c:orientation val="minMax"/>', '<c:orientation val="maxMin"/>'),
    /^sheet Bars: an axis, or what is said along it, runs backwards/,
  ],
  [
    "an axis in powers of ten",
    "Soil",
    (xml) => xml.replace("<c:scaling>", '<c:scaling><c:logBase val="10"/>'),
    /^sheet Bars: an axis, or what is said along it, counts in powers of 10/,
  ],
  [
    "figures of its own along an axis",
    "Soil",
    (xml) => xml.replace(/<c:numFmt formatCode="[^"]*"/, '<c:numFmt formatCode="&quot;40&quot;"'),
    /^sheet Bars: an axis, or what is said along it, prints figures by "40"/,
  ],
  [
    "a figure other than that of its cell, for programs that do not calculate",
    curve,
    (xml) => xml.replace(/(<c:yVal>.*?<c:pt idx="1"><c:v>)[^<]*/, "$1987"),
    /^sheet Charts: a chart keeps 987, where Beds!\S+ holds \d/,
  ],
  [
    "a word other than that of its cell, for programs that do not calculate",
    "Soil",
    (xml) => xml.replace(/(<c:strCache>.*?<c:v>)[^<]*/, "$1Loam"),
    /^sheet Bars: a chart keeps Loam, where \S+ holds \w/,
  ],
])("%s is found", async (_, title, edit, found) => {
  const findings = await told(edited(title, edit));
  expect(findings).toHaveLength(1);
  expect(findings[0]).toMatch(found);
});

test("a single cell that LibreOffice stores as an area of one, where sheets were put in, is the same cell", async () => {
  const single = /(<c:f>'[^']*'!(\$[A-Z]+\$\d+))(<\/c:f>)/g;
  const doubled = edited(curve, (xml) => xml.replace(single, "$1:$2$3"));
  expect(await told(doubled)).toEqual([]);
});

test("a chart that is gone is found", async () => {
  const book = new Tampered(clean, model);
  const drawing = book
    .partNames()
    .find((name) => name.includes("/drawings/") && book.text(name).includes("To scale"));
  book.change(drawing as string, (xml) =>
    xml.replace(/<xdr:oneCellAnchor>.*?<\/xdr:oneCellAnchor>/, ""),
  );
  expect(await told(book.bytes())).toEqual(["sheet Charts: 1 charts are gone"]);
});
