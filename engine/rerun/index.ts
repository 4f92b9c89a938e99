// What other rooms may use of this one: how old jobs are found and read.
export { Books } from "./books.js";
export { isOfficeBook } from "./office-book-file.js";
export { isWorkbook, type OldJob, readContent } from "./old-job.js";
export { findFiles } from "./paths.js";
export { oldRecord } from "./record-job.js";
export { type Trade, tradeOf } from "./trade.js";
export { oldWorkbook } from "./workbook-job.js";
