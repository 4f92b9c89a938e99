import { deflateSync } from "node:zlib";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { crc32 } from "../../engine/workbook/read/crc32.js";

const bytesOf = (base64: string) => new Uint8Array(Buffer.from(base64, "base64"));

function chunk(type: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body) >>> 0);
  return Buffer.concat([length, body, sum]);
}

/** A PNG (ISO/IEC 15948) of one colour, `side` pixels wide and high. */
export function png(side = 8, rgb: readonly [number, number, number] = [40, 90, 160]): Uint8Array {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(side, 0);
  head.writeUInt32BE(side, 4);
  head.set([8, 2, 0, 0, 0], 8);
  const line = Buffer.from([0, ...Array.from({ length: side }, () => rgb).flat()]);
  const pixels = deflateSync(Buffer.concat(Array.from({ length: side }, () => line)));
  const start = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const parts = [chunk("IHDR", head), chunk("IDAT", pixels), chunk("IEND", new Uint8Array())];
  return new Uint8Array(Buffer.concat([start, ...parts]));
}

/** A GIF of one pixel. */
export const gif = bytesOf("R0lGODlhAQABAIAAAAAAAP///yH5BAEAAAAALAAAAAABAAEAAAIBRAA7");
/** The first and last bytes of a JPEG: enough to tell one. */
export const jpeg = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 2, 0xff, 0xd9]);

const spaces =
  'xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"';
const relation = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';

const corner = (end: string, column: number, row: number) =>
  `<xdr:${end}><xdr:col>${column}</xdr:col><xdr:colOff>1000</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>2000</xdr:rowOff></xdr:${end}>`;

/** Between two corners, counted from 0. */
export const twoCells = (column: number, row: number, what: string, over = 3): string =>
  `<xdr:twoCellAnchor editAs="oneCell">${corner("from", column, row)}${corner("to", column + over, row + over)}${what}<xdr:clientData/></xdr:twoCellAnchor>`;

/** From a corner, counted from 0, with its size in EMU. */
export const oneCell = (column: number, row: number, what: string, size = 1_800_000): string =>
  `<xdr:oneCellAnchor>${corner("from", column, row)}<xdr:ext cx="${size}" cy="${size}"/>${what}<xdr:clientData/></xdr:oneCellAnchor>`;

/** A picture as a spreadsheet program writes it; `frame` is the inside of its `a:xfrm`, or that with attributes. */
export const pic = (
  link: string,
  {
    xfrm = '<a:xfrm><a:off x="5" y="5"/><a:ext cx="1800000" cy="900000"/></a:xfrm>',
    cut = "",
  } = {},
): string =>
  `<xdr:pic><xdr:nvPicPr><xdr:cNvPr id="2" name="Photo &amp; sketch" descr="The back &lt;wall&gt;"/><xdr:cNvPicPr/></xdr:nvPicPr>` +
  `<xdr:blipFill><a:blip r:embed="${link}"/>${cut}<a:stretch><a:fillRect/></a:stretch></xdr:blipFill>` +
  `<xdr:spPr>${xfrm}<a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr></xdr:pic>`;

/** A relation of the drawing: to a file within the workbook, or to a place outside. */
export interface Linked {
  readonly file?: Uint8Array;
  readonly outside?: string;
}

/** A workbook with a drawing on one of its sheets that has none. */
export function drawnOn(
  bytes: Uint8Array,
  sheet: string,
  anchors: readonly string[],
  links: Readonly<Record<string, Linked>>,
): Uint8Array {
  const parts = unzipSync(bytes);
  const edit = (name: string, change: (xml: string) => string) => {
    parts[name] = strToU8(change(strFromU8(parts[name] as Uint8Array)));
  };
  const workbook = strFromU8(parts["xl/workbook.xml"] as Uint8Array);
  const names = [...workbook.matchAll(/<sheet [^>]*?name="([^"]*)"/g)].map(([, name]) => name);
  const number = names.indexOf(sheet) + 1;
  if (number === 0) throw new Error(`No sheet ${sheet}.`);
  const path = `xl/worksheets/sheet${number}.xml`;
  const rels = `xl/worksheets/_rels/sheet${number}.xml.rels`;
  parts[rels] ??= strToU8(`${head}<Relationships xmlns="${packageSpace}"></Relationships>`);
  edit(rels, (xml) => withLink(xml, "rIdTest", "drawing", `/xl/drawings/test${number}.xml`));
  edit(path, (xml) => xml.replace(/(<legacyDrawing|<\/worksheet>)/, '<drawing r:id="rIdTest"/>$1'));
  parts[`xl/drawings/test${number}.xml`] = strToU8(
    `${head}<xdr:wsDr ${spaces}>${anchors.join("")}</xdr:wsDr>`,
  );
  let list = `${head}<Relationships xmlns="${packageSpace}"></Relationships>`;
  Object.entries(links).forEach(([id, { file, outside }]) => {
    if (file !== undefined) parts[`xl/media/test_${number}_${id}.png`] = new Uint8Array(file);
    const target = outside ?? `../media/test_${number}_${id}.png`;
    list = withLink(list, id, "image", target, outside !== undefined);
  });
  parts[`xl/drawings/_rels/test${number}.xml.rels`] = strToU8(list);
  edit("[Content_Types].xml", (xml) => xml.replace("</Types>", `${types(number)}</Types>`));
  return zipSync(parts, { level: 0 });
}

const packageSpace = "http://schemas.openxmlformats.org/package/2006/relationships";
const types = (number: number) =>
  `<Default Extension="png" ContentType="image/png"/><Override PartName="/xl/drawings/test${number}.xml" ContentType="application/vnd.openxmlformats-officedocument.drawing+xml"/>`;

const withLink = (xml: string, id: string, kind: string, target: string, outside = false) =>
  xml.replace(
    "</Relationships>",
    `<Relationship Id="${id}" Type="${relation}/${kind}" Target="${target}"${outside ? ' TargetMode="External"' : ""}/></Relationships>`,
  );
