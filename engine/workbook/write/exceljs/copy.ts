import exceljs, { type DataValidation, type Worksheet } from "exceljs";
import type { Book } from "../book/book.js";
import type { Sheet } from "../book/sheet.js";
import { undated } from "../document.js";

/** A book as a workbook of exceljs, with all that exceljs knows of: no charts, no properties of one's own. */
export async function copyOf(book: Book): Promise<exceljs.Workbook> {
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
  return workbook;
}

async function copySheet(sheet: Sheet, target: Worksheet): Promise<void> {
  sheet.widths.forEach((width, column) => {
    if (width !== undefined) target.getColumn(column).width = width;
  });
  for (const { top, left, bottom, right } of sheet.merges) {
    target.mergeCells(top, left, bottom, right);
  }
  copyRows(sheet, target);
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

function copyRows(sheet: Sheet, target: Worksheet): void {
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
}

function viewOf({ frozenLines, showGridLines }: NonNullable<Sheet["view"]>) {
  const grid = showGridLines === undefined ? {} : { showGridLines };
  return frozenLines === undefined
    ? { state: "normal" as const, ...grid }
    : { state: "frozen" as const, ySplit: frozenLines, ...grid };
}
