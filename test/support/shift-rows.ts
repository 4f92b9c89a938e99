import type { Tampered } from "./tamper.js";

/**
 * Puts blank lines into a sheet of a written workbook above `row`, or takes lines out (`by` negative), as a
 * spreadsheet does: cells, merges, conditional formats, names and print areas move along.
 */
export function shiftRows(book: Tampered, sheet: string, row: number, by: number): Tampered {
  const gone = (line: number) => by < 0 && line >= row && line < row - by;
  const moved = (line: number) => (line >= row ? line + by : line);
  const address = (text: string) =>
    text.replace(/(\$?[A-Z]{1,3}\$?)(\d+)/g, (_, column: string, line: string) => {
      const at = Number(line);
      return `${column}${gone(at) ? row : moved(at)}`;
    });
  book.sheet(sheet, (xml) =>
    xml
      .replace(/<row r="(\d+)"[^>]*?(?:\/>|>.*?<\/row>)/g, (whole, line: string) => {
        if (gone(Number(line))) return "";
        return whole
          .replace(/^<row r="\d+"/, `<row r="${moved(Number(line))}"`)
          .replace(/<c r="([A-Z]+)\d+"/g, `<c r="$1${moved(Number(line))}"`)
          .replace(/<f>([^<]*)<\/f>/g, (_, formula: string) => `<f>${inFormula(formula)}</f>`);
      })
      .replace(
        /(sqref|<mergeCell ref)="([^"]*)"/g,
        (_, key, ref: string) => `${key}="${address(ref)}"`,
      )
      .replace(
        /<formula>([^<]*)<\/formula>/g,
        (_, text: string) => `<formula>${inFormula(text)}</formula>`,
      ),
  );
  const elsewhere = new RegExp(`((?:&apos;|')?${sheet}(?:&apos;|')?!)([$A-Z0-9:]+)`, "g");
  for (const part of book.partNames()) {
    if (!/^xl\/(workbook|worksheets\/sheet\d+)\.xml$/.test(part)) continue;
    const shifted = book
      .text(part)
      .replace(elsewhere, (_, prefix: string, area: string) => `${prefix}${address(area)}`);
    book.put(part, shifted);
  }
  return book;

  function inFormula(formula: string): string {
    const bare = /(?<![A-Za-z_.!'])(\$?[A-Z]{1,2}\$?\d+)(?![\w.(])/g;
    return formula
      .split(/(&quot;.*?&quot;|".*?")/)
      .map((part, i) => (i % 2 === 0 ? part.replace(bare, address) : part))
      .join("");
  }
}
