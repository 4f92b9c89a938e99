import { extname } from "node:path";
import { RillbookError } from "../errors.js";
import type { BookLayout, LayoutOf } from "../template/book-layout.js";
import { type CheckedBook, checkBook } from "./check.js";
import { rawBookFromJson } from "./from-json.js";
import { rawBookFromXlsx } from "./from-xlsx.js";
import type { OfficeBook } from "./office-book.js";

/**
 * Reads the office book, .xlsx or .json, and checks every row.
 * Throws WorkbookRefused for a file that is no safe workbook, RillbookError for another kind
 * of file or broken JSON, JobError for what it holds: file, sheet, row, column, value and rule.
 */
export async function readOfficeBook(path: string, layout: Layouts): Promise<OfficeBook> {
  return (await checkedOfficeBook(path, layout)).book;
}

type Layouts = BookLayout | LayoutOf;

/** The same, and which rows are still placeholders. */
export async function checkedOfficeBook(path: string, layout: Layouts): Promise<CheckedBook> {
  switch (extname(path).toLowerCase()) {
    case ".json":
      return checkBook(await rawBookFromJson(path, layout), layout, path);
    case ".xlsx":
      return checkBook(await rawBookFromXlsx(path, layout), layout, path);
    default:
      throw new RillbookError(
        "book-kind",
        `${path} is not an office book: its name must end in .xlsx or .json. Save it as .xlsx.`,
      );
  }
}
