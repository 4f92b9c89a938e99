import type exceljs from "exceljs";

/**
 * Has cells of one look share one style object, once all are written: exceljs spells a style out as
 * XML for each object that it has not met, and there are as many of them as cells.
 */
export function shareStyles(workbook: exceljs.Workbook): void {
  const known = new Map<string, Partial<exceljs.Style>>();
  for (const sheet of workbook.worksheets) {
    sheet.eachRow((row) => {
      row.eachCell((cell) => {
        const { style } = cell;
        // without a format of its own a cell takes that of its kind of value
        const kind = style.numFmt === undefined ? `${cell.type} ${cell.effectiveType}` : "";
        const key = `${kind}|${JSON.stringify(style)}`;
        const before = known.get(key);
        if (before === undefined) known.set(key, style);
        else cell.style = before;
      });
    });
  }
}
