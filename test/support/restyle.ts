import type { Tampered } from "./tamper.js";

/** What to change of a cell's style: the inside of a <font>, or the code of its number format. */
export interface Restyle {
  readonly font?: string;
  readonly format?: string;
  /** Attributes of its <alignment>, in place of those it has. */
  readonly alignment?: string;
}

/** Gives one cell a style of its own: the one it has, with another font or number format. */
export function restyle(book: Tampered, sheet: string, address: string, to: Restyle): Tampered {
  const cell = new RegExp(`<c r="${address}"([^>]*?) s="(\\d+)"`);
  const part = partOf(book, sheet);
  const style = Number(cell.exec(book.text(part))?.[2]);
  const xml = book.text("xl/styles.xml");
  const all = /<cellXfs[^>]*>(.*?)<\/cellXfs>/s.exec(xml)?.[1] ?? "";
  const xfs = all.match(/<xf [^>]*?(?:\/>|>.*?<\/xf>)/gs) ?? [];
  const fonts = (/<fonts[^>]*>(.*?)<\/fonts>/s.exec(xml)?.[1] ?? "").match(/<font>/g) ?? [];
  let xf = xfs[style] ?? "";
  let out = xml;
  if (to.font !== undefined) {
    xf = xf.replace(/fontId="\d+"/, `fontId="${fonts.length}"`);
    out = out.replace("</fonts>", `<font>${to.font}</font></fonts>`);
  }
  if (to.alignment !== undefined) {
    const bare = xf.replace(/<alignment[^>]*\/>/, "").replace(/\/>$/, "></xf>");
    xf = bare.replace("</xf>", `<alignment ${to.alignment}/></xf>`);
  }
  if (to.format !== undefined) {
    xf = xf.replace(/numFmtId="\d+"/, 'numFmtId="400"');
    const code = to.format.replaceAll('"', "&quot;").replaceAll("<", "&lt;");
    const made = `<numFmt numFmtId="400" formatCode="${code}"/></numFmts>`;
    // a dollar would mean something in a text that replaces
    out = out.replace("</numFmts>", () => made);
  }
  book.put("xl/styles.xml", out.replace("</cellXfs>", `${xf}</cellXfs>`));
  return book.change(part, (text) =>
    text.replace(cell, (_, more: string) => `<c r="${address}"${more} s="${xfs.length}"`),
  );
}

/** The part of a sheet by its name, where parts are numbered in the order of the tabs. */
export function partOf(book: Tampered, sheet: string): string {
  const names = [...book.text("xl/workbook.xml").matchAll(/<sheet [^>]*?name="([^"]*)"/g)];
  return `xl/worksheets/sheet${names.findIndex(([, name]) => name === sheet) + 1}.xml`;
}

const relation = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** Puts a part into the package and a relationship to it into another part's. */
export function attach(
  book: Tampered,
  from: string,
  kind: string,
  name: string,
  text: string,
): string {
  const slash = from.lastIndexOf("/") + 1;
  const links = `${from.slice(0, slash)}_rels/${from.slice(slash)}.rels`;
  const id = `rId${kind}`;
  const head =
    '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">';
  if (!book.partNames().includes(links)) book.put(links, `${head}</Relationships>`);
  book.change(links, (xml) =>
    xml.replace(
      "</Relationships>",
      `<Relationship Id="${id}" Type="${relation}/${kind}" Target="/${name}"/></Relationships>`,
    ),
  );
  book.put(name, text);
  return id;
}
