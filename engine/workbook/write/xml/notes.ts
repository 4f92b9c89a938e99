import type { Sheet, SheetCell } from "../book/sheet.js";
import { content, head } from "./text.js";

/** The notes at the cells of a sheet, line by line. */
export const notesOf = ({ rows }: Sheet): SheetCell[] =>
  rows.flatMap((row) => row?.cells.filter((cell) => cell?.note !== undefined) ?? []) as SheetCell[];

/** The texts of notes (ISO/IEC 29500-1, 18.7). */
export function commentsXml(notes: readonly SheetCell[]): string {
  const said = notes.map(
    ({ address, note = "" }) =>
      `<comment ref="${address}" authorId="0"><text><r><t${/^\s|\n|\s$/.test(note) ? ' xml:space="preserve"' : ""}>${content(note)}</t></r></text></comment>`,
  );
  return (
    `${head}<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author>Author</author></authors>` +
    `<commentList>${said.join("")}</commentList></comments>`
  );
}

const shapeType =
  '<v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe">' +
  '<v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>';

/** The boxes that notes are shown in, in the old language of drawings that programs ask for (ISO/IEC 29500-4, 19). */
export function boxesXml(notes: readonly SheetCell[]): string {
  const shapes = notes.map(
    ({ line, column }, i) =>
      `<v:shape id="_x0000_s${1025 + i}" type="#_x0000_t202" style="position:absolute; margin-left:105.3pt;margin-top:10.5pt;width:97.8pt;height:59.1pt;z-index:1;visibility:hidden" ` +
      `fillcolor="infoBackground [80]" strokecolor="none [81]" o:insetmode="auto"><v:fill color2="infoBackground [80]"/><v:shadow color="none [81]" obscured="t"/><v:path o:connecttype="none"/>` +
      `<v:textbox style="mso-direction-alt:auto" inset="1.3mm,1.3mm,2.5mm,2.5mm"><div style="text-align:left"/></v:textbox>` +
      `<x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>${anchor(line, column)}</x:Anchor>` +
      `<x:Locked>True</x:Locked><x:AutoFill>False</x:AutoFill><x:LockText>True</x:LockText><x:Row>${line - 1}</x:Row><x:Column>${column - 1}</x:Column></x:ClientData></v:shape>`,
  );
  return (
    `${head}<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel">` +
    `<o:shapelayout v:ext="edit"><o:idmap v:ext="edit" data="1"/></o:shapelayout>${shapeType}${shapes.join("")}</xml>`
  );
}

/** Beside the cell, a little above it, two columns wide and four lines high. */
function anchor(line: number, column: number): string {
  const top = Math.max(line - 2, 0);
  return `${column}, 6, ${top}, 14, ${column + 2}, 2, ${top + 4}, 16`;
}
