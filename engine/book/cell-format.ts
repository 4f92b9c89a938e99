import type exceljs from "exceljs";
import type { BookColumn } from "../template/book-layout.js";

/** The number format of a column's cells. */
export const formatOf = ({ kind, percent }: BookColumn): string =>
  percent
    ? "0.##%"
    : { code: "@", text: "@", number: "General", date: "yyyy-mm-dd", yesno: "@" }[kind];

/** A list in a validation has at most 255 characters. */
const longestList = 255;
/** Spreadsheet programs cut the message of a validation off. */
const longestMessage = 250;

/** What a spreadsheet program checks while a person types. */
export function validationOf(column: BookColumn): exceljs.DataValidation | undefined {
  const choices = column.kind === "yesno" ? ["yes", "no"] : column.choices;
  const error = column.means.slice(0, longestMessage);
  const told = { showErrorMessage: true, errorTitle: column.key.slice(0, 30), error };
  if (choices !== undefined && choices.join(",").length <= longestList) {
    return { type: "list", allowBlank: true, formulae: [`"${choices.join(",")}"`], ...told };
  }
  if (column.kind === "number") {
    const { least = -1e9, most = 1e9 } = column;
    const formulae = [least, most];
    return { type: "decimal", operator: "between", allowBlank: true, formulae, ...told };
  }
  return undefined;
}
