import exceljs, { type DataValidation, type Worksheet } from "exceljs";
import { strFromU8, unzipSync } from "fflate";
import { expect } from "vitest";
import type { Value } from "../../engine/formula/value.js";
import type { Model } from "../../engine/template/model.js";
import type { Book } from "../../engine/workbook/write/book/book.js";
import { partsOf } from "../../engine/workbook/write/book/parts.js";
import type { Sheet } from "../../engine/workbook/write/book/sheet.js";
import { Charts } from "../../engine/workbook/write/charts/add.js";
import { undated } from "../../engine/workbook/write/document.js";
import type { Identity } from "../../engine/workbook/write/identity.js";
import { bookOf } from "../../engine/workbook/write/lay-out.js";
import { finishPackage } from "../../engine/workbook/write/package.js";

const properties = { rillbookJob: `A "job" of R & D's` };

/**
 * Holds the parts of a job's workbook, but for its charts, against what exceljs makes of the same layout: an
 * independent writer of the same format. What is left out of the comparison, and why, stands in `alike`.
 */
export async function mustBeAsExceljs(
  model: Model,
  values: readonly Value[],
  identity: Identity,
): Promise<void> {
  const { book } = bookOf(model, values, identity);
  const own = alike(partsOf(book, properties, new Charts({ model, values }, [])));
  const packed = finishPackage(await throughExceljs(book), properties);
  const other = alike(
    Object.entries(unzipSync(packed)).map(([name, part]) => [name, strFromU8(part)] as const),
  );
  expect([...own.keys()]).toEqual([...other.keys()]);
  for (const [name, xml] of own) {
    // not by toBe: of parts so long, telling the difference takes minutes
    if (xml !== other.get(name)) expect(aroundDifference(xml, other.get(name) ?? "")).toEqual([]);
  }
}

function aroundDifference(own: string, other: string): string[] {
  const at = [...own].findIndex((letter, i) => letter !== other[i]);
  return [own, other].map((xml) => xml.slice(Math.max(0, at - 100), at + 100));
}

function alike(parts: Iterable<readonly [string, string]>): Map<string, string> {
  const all = [...parts];
  const unseen = unseenLooks(all.find(([name]) => name === "xl/styles.xml")?.[1] ?? "");
  const said = all.map(([name, given]): [string, string] => {
    // exceljs escapes quotes where XML does not ask for it
    const xml = given
      .replaceAll("&apos;", "'")
      .replaceAll(/>[^<]+</g, (text) => text.replaceAll("&quot;", '"'));
    // exceljs adds styles for a feature of one program, which a bid has no use for
    if (name === "xl/styles.xml") return [name, xml.replace(/<extLst>.*<\/extLst>/, "")];
    // exceljs takes a width of nine digits for no width at all, though programs use another one then
    if (!name.startsWith("xl/worksheets/sheet")) return [name, xml];
    const widths = xml.replaceAll(/<col [^>]*width="9"[^>]*\/>/g, "");
    // exceljs writes empty cells that show nothing
    const cells = widths.replaceAll(/<c r="[A-Z]+\d+"(?: s="(\d+)")?\/>/g, (cell, look = "0") =>
      unseen.has(look) ? "" : cell,
    );
    return [name, cells.replaceAll(/<row ([^>]*)><\/row>/g, "<row $1/>")];
  });
  return new Map(said.sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** The places of the looks that draw neither box nor tint, and whose cells are locked. */
function unseenLooks(styles: string): ReadonlySet<string> {
  const [, looks = ""] = /<cellXfs[^>]*>(.*)<\/cellXfs>/.exec(styles) ?? [];
  const all = looks.match(/<xf [^>]*\/>|<xf .*?<\/xf>/g) ?? [];
  const isUnseen = (look: string) =>
    look.includes('fillId="0"') && look.includes('borderId="0"') && !look.includes('locked="0"');
  return new Set(all.flatMap((look, i) => (isUnseen(look) ? [String(i)] : [])));
}

async function throughExceljs(book: Book): Promise<Uint8Array> {
  const workbook = new exceljs.Workbook();
  workbook.created = undated;
  workbook.modified = undated;
  Object.assign(workbook, book.document);
  workbook.calcProperties.fullCalcOnLoad = true;
  for (const sheet of book.sheets) {
    const { hidden = false, defaultRowHeight = 15, tabColor } = sheet.options;
    const target = workbook.addWorksheet(sheet.name, {
      state: hidden ? "hidden" : "visible",
      properties: {
        defaultRowHeight,
        ...(tabColor === undefined ? {} : { tabColor: { argb: tabColor } }),
      },
    });
    await copySheet(sheet, target);
  }
  for (const { name, sheet, area } of book.names) {
    workbook.definedNames.add(`'${sheet}'!${area}`, name);
  }
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

async function copySheet(sheet: Sheet, target: Worksheet): Promise<void> {
  sheet.widths.forEach((width, column) => {
    if (width !== undefined) target.getColumn(column).width = width;
  });
  for (const { top, left, bottom, right } of sheet.merges) {
    target.mergeCells(top, left, bottom, right);
  }
  for (const row of sheet.rows) {
    for (const cell of row?.cells ?? []) {
      if (cell === undefined) continue;
      const to = target.getCell(cell.line, cell.column);
      if (cell.master === undefined) to.value = cell.value as exceljs.CellValue;
      // a whole new object: cells of exceljs that are given one style share it
      to.style = { ...cell.style };
      if (cell.note !== undefined) to.note = cell.note;
    }
    if (row?.height !== undefined) target.getRow(row.line).height = row.height;
    if (row?.hidden) target.getRow(row.line).hidden = true;
  }
  for (const line of sheet.pageBreaks) target.getRow(line).addPageBreak();
  for (const { ref, rules } of sheet.conditionals) {
    target.addConditionalFormatting({
      ref,
      rules: rules.map((rule) => ({ ...rule, style: { ...rule.style } })),
    });
  }
  const { dataValidations } = target as unknown as {
    dataValidations: { add(area: string, rule: DataValidation): void };
  };
  for (const [area, rule] of sheet.validations) dataValidations.add(area, rule);
  const { centered = false, ...setup } = sheet.pageSetup;
  target.pageSetup = { ...setup, ...(centered ? { horizontalCentered: true } : {}) };
  if (sheet.footer !== undefined) target.headerFooter.oddFooter = sheet.footer;
  if (sheet.view !== undefined) target.views = [viewOf(sheet.view)];
  await target.protect("", { formatColumns: true, formatRows: true, selectLockedCells: true });
}

function viewOf({ frozenLines, showGridLines }: NonNullable<Sheet["view"]>) {
  const grid = showGridLines === undefined ? {} : { showGridLines };
  return frozenLines === undefined
    ? { state: "normal" as const, ...grid }
    : { state: "frozen" as const, ySplit: frozenLines, ...grid };
}
