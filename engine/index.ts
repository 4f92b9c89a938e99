/**
 * What rillbook promises to whoever imports it: templates are declared at once, and all that works on
 * them is loaded when it is first called, so that importing is quick. What is not named here may change.
 */

export {
  type Bid,
  calculate,
  calculateFast,
  type FailedCheck,
  valueAt,
} from "./api/bid.js";
export { runCommand, type Voices } from "./api/command.js";
export { compile } from "./api/compile.js";
export {
  type JobOptions,
  newJob,
  openJob,
  readOfficeBook,
  starterBook,
} from "./api/jobs.js";
export { type RerunRequest, rerun } from "./api/rerun.js";
export { trace, traceText } from "./api/trace.js";
export {
  type AuditResult,
  auditWorkbook,
  readWorkbook,
  type TakenJob,
  type TakeOptions,
  takeWorkbook,
  type WriteOptions,
  writeWorkbook,
} from "./api/workbooks.js";
export type { Finding } from "./audit/finding.js";
export { type FindingCode, findingCodes } from "./audit/finding-codes.js";
export type { LoadedJob } from "./book/load-job.js";
export type { OfficeBook } from "./book/office-book.js";
export { type ErrorMeaning, type ErrorName, errorCodes } from "./error-codes.js";
export { RillbookError } from "./errors.js";
export { columnOf, formula, type NamedFormula, oneLike } from "./formula/named-formula.js";
export { CellError, type Value } from "./formula/value.js";
export type { JobRecord } from "./job/record.js";
export type { TrailEntry } from "./job/trail/entry.js";
export type { Listener, Outcome } from "./rerun/rerun.js";
export type { BookLayout, BookTable } from "./template/book-layout.js";
export { type ChartBlock, chart, type Series } from "./template/chart.js";
export {
  type Block,
  type LinesBlock,
  lines,
  type PanelBlock,
  type ProseBlock,
  paragraphs,
  prose,
  type SheetDeclaration,
  sheet,
  type TableBlock,
  type TextBlock,
  table,
  unprinted,
} from "./template/declare.js";
export {
  type Asked,
  type BookDeclaration,
  book,
  type CalcDeclaration,
  type CellDeclaration,
  type CheckDeclaration,
  calc,
  check,
  decide,
  type InputDeclaration,
  input,
  office,
  type PublishedDeclaration,
  published,
  walk,
} from "./template/declare-cells.js";
export { type Extension, extend } from "./template/extend.js";
export type { Cell, Model } from "./template/model.js";
export { panel, place, row } from "./template/panel.js";
export {
  type Roles,
  type Template,
  type TemplateDeclaration,
  template,
} from "./template/template.js";
export { TemplateError } from "./template/template-error.js";
export type { TraceNode } from "./trace/node.js";
export { quantities } from "./units/quantities.js";
export { type Quantity, quantity, type UnitSystem } from "./units/quantity.js";
export { unitNames } from "./units/unit.js";
export type { WorkbookContent } from "./workbook/read/content.js";
export { WorkbookRefused } from "./workbook/read/refused.js";
