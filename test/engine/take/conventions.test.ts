import { strFromU8, unzipSync } from "fflate";
import { beforeAll, expect, test } from "vitest";
import { calculate } from "../../../engine/evaluate/calculate.js";
import { takeWorkbook } from "../../../engine/take/take.js";
import { modelOf } from "../../../engine/template/models.js";
import { columnLetters } from "../../../engine/workbook/read/address.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { cutFormula, shiftFormula } from "../../../engine/workbook/read/shift.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity, fenceJob } from "../../support/fence.js";
import { typedOver } from "../../support/typed-over.js";
import { type Parts, zipped } from "../workbook/read/build.js";

// The ways in which other spreadsheet programs write the same workbook (ISO/IEC 29500-1 §18.3.1, §18.4.8).

const model = modelOf(fence, "us");
let bytes: Uint8Array;

beforeAll(async () => {
  bytes = await writeWorkbook(model, calculate(model, fenceGiven(model)), fenceIdentity(model));
});

type Texts = Record<string, string>;
const isSheet = (name: string) => /^xl\/worksheets\/sheet\d+\.xml$/.test(name);

/** The workbook with its parts as text rewritten; counts what was rewritten. */
function rewritten(
  from: Uint8Array,
  rewrite: (parts: Texts, count: () => void) => Texts,
): { bytes: Uint8Array; count: number } {
  const texts: Texts = {};
  for (const [name, part] of Object.entries(unzipSync(from))) texts[name] = strFromU8(part);
  let count = 0;
  const parts: Parts = rewrite(texts, () => {
    count += 1;
  });
  return { bytes: zipped(parts), count };
}

const inSheets = (parts: Texts, change: (xml: string) => string): Texts =>
  Object.fromEntries(
    Object.entries(parts).map(([name, xml]) => [name, isSheet(name) ? change(xml) : xml]),
  );

/** Each text in its cell, in two runs of different look. */
function inlineRuns(parts: Texts, count: () => void): Texts {
  const shared = [...(parts["xl/sharedStrings.xml"] ?? "").matchAll(/<si>(.*?)<\/si>/gs)].map(
    ([, inside = ""]) => /<t[^>]*>(.*?)<\/t>/s.exec(inside)?.[1] ?? "",
  );
  return inSheets(parts, (xml) =>
    xml.replace(/<c ([^>]*) t="s"><v>(\d+)<\/v><\/c>/g, (_, attributes: string, at: string) => {
      count();
      const text = shared[Number(at)] ?? "";
      // not within an entity
      const half = /^[^&]{2}/.test(text) ? 2 : 0;
      const run = (piece: string) => `<r><rPr><b/></rPr><t xml:space="preserve">${piece}</t></r>`;
      return `<c ${attributes} t="inlineStr"><is>${run(text.slice(0, half))}${run(text.slice(half))}</is></c>`;
    }),
  );
}

/** Formulas that are those of the cell above, moved down, share its text. */
function sharedFormulas(parts: Texts, count: () => void): Texts {
  return inSheets(parts, (xml) => {
    const formulas = new Map<string, string>();
    for (const [, address = "", formula = ""] of xml.matchAll(
      /<c r="([A-Z]+\d+)"[^>]*><f>(.*?)<\/f>/g,
    )) {
      formulas.set(address, formula);
    }
    let next = 0;
    const groups = new Map<string, string>();
    for (const [address, formula] of formulas) {
      const [, letters = "", line = ""] = /^([A-Z]+)(\d+)$/.exec(address) ?? [];
      const above = `${letters}${Number(line) - 1}`;
      const before = formulas.get(above);
      if (before !== undefined && shiftFormula(cutFormula(before), 1, 0) === formula) {
        const group = groups.get(above) ?? String(next++);
        groups.set(above, group);
        groups.set(address, group);
      }
    }
    const begun = new Set<string>();
    return xml.replace(
      /(<c r="([A-Z]+\d+)"[^>]*>)<f>(.*?)<\/f>/g,
      (all, cell: string, address: string, formula: string) => {
        const group = groups.get(address);
        if (group === undefined) return all;
        count();
        if (begun.has(group)) return `${cell}<f t="shared" si="${group}"/>`;
        begun.add(group);
        return `${cell}<f t="shared" ref="${address}:${columnLetters(1)}9" si="${group}">${formula}</f>`;
      },
    );
  });
}

/** Every element of the sheets with a prefix of its namespace. */
function prefixed(parts: Texts, count: () => void): Texts {
  return inSheets(parts, (xml) => {
    count();
    return xml
      .replace(/<(\/?)([a-zA-Z])/g, "<$1x:$2")
      .replace(/ xmlns="([^"]*main)"/, ' xmlns:x="$1"');
  });
}

const dateWritten = (parts: Texts, count: () => void): Texts =>
  inSheets(parts, (xml) =>
    xml.replace(/<c ([^>]*)><v>46146<\/v><\/c>/g, (_, attributes: string) => {
      count();
      return `<c ${attributes} t="d"><v>2026-05-04T00:00:00</v></c>`;
    }),
  );

const inCapitals = (parts: Texts, count: () => void): Texts => {
  const up = (part: string, tag: string) =>
    (parts[part] ?? "").replace(new RegExp(`(<${tag} [^>]*?name=")([^"]*)"`, "g"), (_, a, b) => {
      count();
      return `${a}${String(b).toUpperCase()}"`;
    });
  return {
    ...parts,
    "xl/workbook.xml": up("xl/workbook.xml", "definedName"),
    "docProps/custom.xml": up("docProps/custom.xml", "property"),
  };
};

const looseFormulas = (parts: Texts, count: () => void): Texts =>
  inSheets(parts, (xml) =>
    xml.replace(/<f>([^<]*)<\/f>/g, (_, formula: string) => {
      count();
      const pieces = formula.split(/(".*?")/);
      return `<f>${pieces.map((piece) => (piece.startsWith('"') ? piece : loose(piece))).join("")}</f>`;
    }),
  );

/** Spaces, small letters, TRUE as a function: LibreOffice and others write some of these. */
const loose = (formula: string): string =>
  formula
    .replaceAll(",", " , ")
    .replaceAll(/\bTRUE\b/g, "TRUE()")
    .replaceAll(/\b(SUM|IF|INDEX|MATCH|MAX)\(/g, (name) => name.toLowerCase());

test.each<[string, (parts: Texts, count: () => void) => Texts, number]>([
  ["rich text in the cells", inlineRuns, 100],
  ["shared formulas", sharedFormulas, 30],
  ["prefixed elements", prefixed, 5],
  ["dates written out", dateWritten, 1],
  ["names and properties in capitals", inCapitals, 50],
  ["formulas in another hand", looseFormulas, 50],
])("%s: the same record, each change told, nothing else found", async (_, rewrite, least) => {
  const plain = rewritten(bytes, rewrite);
  expect(plain.count).toBeGreaterThanOrEqual(least);
  const taker = { by: "A", time: "2026-03-04T05:06:07.089Z" };
  const into = { record: fenceJob, file: "job.json" };
  const same = takeWorkbook(readWorkbook(plain.bytes), [fence], "bid.xlsx", taker, into);
  expect(same).toEqual({ job: { ...fenceJob, trail: [] }, entries: [], findings: [] });
  const other = rewritten(typedOver(bytes, model, { "runs.run[2]": 34.5 }), rewrite);
  const taken = takeWorkbook(readWorkbook(other.bytes), [fence], "bid.xlsx", taker, into);
  expect(taken.entries.map((one) => [one.input, one.old, one.new])).toEqual([
    ["runs.run[2]", 33.25, 34.5],
  ]);
  // nobody calculated after the change, and that is told
  expect(new Set(taken.findings.map(({ code }) => code))).toEqual(new Set(["value-stale"]));
});
