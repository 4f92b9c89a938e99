import { expect } from "vitest";
import { appended } from "../../../../../engine/job/trail/chain.js";
import { fenceTrail } from "../../../../support/fence-bid.js";
import { inlineText, type Tampered } from "../../../../support/tamper.js";
import type { Case } from "../run.js";

type SheetName = "Trail" | "As written";

/** Changes a line of a list of values as written: that of an input, of a price, or of all that has one origin. */
function line(
  book: Tampered,
  id: string,
  edit: (row: string) => string,
  sheet: SheetName = "Trail",
): Tampered {
  const strings = [...book.text("xl/sharedStrings.xml").matchAll(/<si>(.*?)<\/si>/g)];
  const place = strings.findIndex(([, one]) => one?.replace(/<[^>]*>/g, "") === id);
  return book.sheet(sheet, (xml) => {
    const row = [...xml.matchAll(/<row .*?<\/row>/g)].find(([one]) =>
      new RegExp(`<c r="B\\d+"[^>]*><v>${place}</v>`).test(one),
    )?.[0];
    if (row === undefined) throw new Error(`No line of ${id}.`);
    return xml.replace(row, edit(row));
  });
}

/** Writes words into a cell of a row; one that shows nothing may not stand in the file, and is put in its place. */
const words = (column: string, text: string) => (row: string) => {
  const [, at = ""] = /^<row r="(\d+)"/.exec(row) ?? [];
  const own = new RegExp(`<c r="${column}${at}"[^>]*?(?:/>|>.*?</c>)`);
  const style = /^<c [^>]*( s="\d+")/.exec(own.exec(row)?.[0] ?? "")?.[1] ?? "";
  const rest = row.replace(own, "");
  const after = [...rest.matchAll(/<c r="([A-Z]+)\d+"/g)].find(([, name = ""]) => name > column);
  const end = after?.index ?? rest.lastIndexOf("</row>");
  const cell = `<c r="${column}${at}"${style} t="inlineStr"><is><t>${text}</t></is></c>`;
  return `${rest.slice(0, end)}${cell}${rest.slice(end)}`;
};

/** A chain that holds, of entries that are not those that were written. */
function rewritten(book: Tampered, from: number, with_: Record<string, string>): Tampered {
  const changes = fenceTrail.map(({ number, hash: _, ...change }) =>
    number === from ? { ...change, ...with_ } : change,
  );
  const made = appended([], changes);
  book.change("xl/sharedStrings.xml", (xml) => {
    let out = xml;
    fenceTrail.forEach((entry, i) => {
      out = out.replace(entry.hash, made[i]?.hash ?? "");
    });
    return out;
  });
  const head = made.at(-1)?.hash ?? "";
  book.change("docProps/custom.xml", (xml) => xml.replace(fenceTrail.at(-1)?.hash ?? "", head));
  return book.sheet("Trail", (xml) => {
    const row = [...xml.matchAll(/<row .*?<\/row>/g)].filter(([one]) =>
      new RegExp(`<c r="A\\d+"[^>]*><v>${from}</v>`).test(one),
    );
    const last = row.at(-1)?.[0] ?? "";
    const column = { by: "F", time: "G", note: "H" } as const;
    const [[key, text] = ["by", ""]] = Object.entries(with_);
    return xml.replace(last, words(column[key as keyof typeof column], text)(last));
  });
}

/** Where values come from: inputs, prices, the trail and the marks. */
export const originCases: readonly Case[] = [
  {
    what: "an input changed, not told in the trail",
    edit: (book) => book.cell("runs.run[1]", () => "<v>51.7</v>"),
    verdict: "found",
    figure: true,
    finds: { code: "input-untold", name: "runs.run[1]" },
  },
  {
    what: "a price changed",
    edit: (book) => book.cell("items.unit_price[1]", () => "<v>19.35</v>"),
    verdict: "found",
    figure: true,
    finds: { code: "price-changed", name: "items.unit_price[1]" },
  },
  {
    what: "a price changed together with its copy on sheet As written",
    edit: (book) => {
      book.cell("items.unit_price[1]", () => "<v>19.35</v>");
      const cheaper = (row: string) => row.replace("<v>21.35</v>", "<v>19.35</v>");
      line(book, "items.unit_price[1]", cheaper, "As written");
    },
    verdict: "found",
    figure: true,
    finds: { code: "trail", found: expect.stringContaining("The prices as written") },
  },
  {
    what: "an input changed together with its copy on sheet Trail",
    edit: (book) => {
      book.cell("paint.coats[2]", () => "<v>2</v>");
      line(book, "paint.coats[2]", (row) => row.replace("<v>3</v>", "<v>2</v>"));
    },
    verdict: "found",
    figure: true,
    finds: { code: "trail", found: expect.stringContaining("The inputs as written") },
  },
  {
    what: "the mark of the prices taken out",
    edit: (book) =>
      book.change("docProps/custom.xml", (xml) =>
        xml.replace(/<property [^>]*name="rillbook office mark">.*?<\/property>/, ""),
      ),
    verdict: "found",
    finds: { code: "trail", found: expect.stringContaining("mark of the prices is missing") },
  },
  {
    what: "all custom properties dropped, as libraries do that save a workbook",
    edit: (book) =>
      book.change("_rels/.rels", (xml) =>
        xml.replace(/<Relationship [^>]*custom-properties"[^>]*\/>/, ""),
      ),
    verdict: "found",
    finds: {
      code: "property",
      grade: "doubtful",
      found: expect.stringContaining("libraries drop"),
    },
  },
  {
    what: "all custom properties dropped, and the price typed over",
    edit: (book) => {
      book.change("_rels/.rels", (xml) =>
        xml.replace(/<Relationship [^>]*custom-properties"[^>]*\/>/, ""),
      );
      book.cell("price", () => "<v>3500</v>");
    },
    verdict: "found",
    figure: true,
    finds: { code: "formula-overwritten", name: "price" },
  },
  {
    what: "a published figure changed",
    edit: (book) => book.cell("soils.spacing[3]", () => "<v>12</v>"),
    verdict: "found",
    figure: true,
    finds: { code: "published-changed", name: "soils.spacing[3]" },
  },
  {
    what: "words changed that the template fixes",
    edit: (book) => book.cell("soils.holds[1]", () => inlineText("any fence"), "inlineStr"),
    verdict: "found",
    figure: true,
    finds: { code: "published-changed", name: "soils.holds[1]" },
  },
  {
    what: "an origin rewritten in words: an assumption becomes a measurement",
    edit: (book) => line(book, "soil", words("E", "measured on site")),
    verdict: "found",
    finds: { code: "trail", name: "soil", found: expect.stringContaining("measured on site") },
  },
  {
    what: "another person named in the list of inputs",
    edit: (book) => line(book, "height", words("F", "Estimator B")),
    verdict: "found",
    finds: { code: "trail", name: "height" },
  },
  {
    what: "another day named in the list of inputs",
    edit: (book) => line(book, "height", words("G", "2026-04-01T09:00:00.000Z")),
    verdict: "found",
    finds: { code: "trail", name: "height" },
  },
  {
    what: "a note put beside an input in the list",
    edit: (book) => line(book, "height", words("H", "as agreed by telephone")),
    verdict: "found",
    finds: { code: "trail", name: "height" },
  },
  {
    what: "another office book named beside the prices",
    edit: (book) => line(book, "office rows", words("F", "prices of another year")),
    verdict: "found",
    finds: { code: "trail", name: "office rows" },
  },
  {
    what: "an entry of the trail edited",
    edit: (book) =>
      book.change("xl/sharedStrings.xml", (xml) => xml.replace("Estimator A", "Estimator B")),
    verdict: "found",
    finds: { code: "trail", found: expect.stringContaining("does not fit its hash") },
  },
  {
    what: "time running backwards in a chain that holds",
    edit: (book) => rewritten(book, 3, { time: "2026-04-01T09:00:00.000Z" }),
    verdict: "found",
    finds: { code: "trail", found: expect.stringContaining("time runs backwards") },
  },
  {
    what: "a whole new chain with another person in it, and a head to fit",
    edit: (book) => {
      rewritten(book, 3, { by: "Estimator B" });
      line(book, "height", words("F", "Estimator B"));
    },
    verdict: "out of reach",
    why: "who holds the whole file can write a whole new chain; the job record's own trail and a seal show it",
  },
];
