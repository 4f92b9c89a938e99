import type { Workbook } from "exceljs";
import type { Value } from "../../formula/value.js";
import { checkShown } from "../../template/checks-sheet.js";
import type { Cell, Model } from "../../template/model.js";
import { notStanding } from "../../template/standing.js";
import { formulaContent } from "./cells.js";
import { textHeight } from "./grid.js";
import type { Identity } from "./identity.js";
import { attention, styles } from "./look.js";
import { numberFormat, shownUnit } from "./number-format.js";

/** How many of the failed checks the sheet shows. */
const firstFailing = 8;

/** The first sheet: what this workbook is, the bid in figures, what is still open, where things are. */
export function writeSummary(
  workbook: Workbook,
  model: Model,
  values: readonly Value[],
  identity: Identity,
): void {
  const sheet = workbook.addWorksheet("Summary");
  sheet.getColumn(1).width = 46;
  sheet.getColumn(2).width = 18;
  sheet.getColumn(3).width = 60;
  const put = (line: number, column: number, value: string, style: object) => {
    sheet.getCell(line, column).value = value;
    sheet.getCell(line, column).style = style;
  };
  const shown = (line: number, column: number, formula: string, value: Value, style: object) => {
    sheet.getCell(line, column).value = formulaContent(formula, value);
    sheet.getCell(line, column).style = style;
  };
  const { title, customer } = model.template.roles ?? {};
  const valueAt = (id: string): Value => values[model.byId.get(id)?.index as number] ?? null;
  if (title === undefined) put(1, 1, model.template.title, styles.title);
  else shown(1, 1, `${title}&""`, valueAt(title) ?? "", styles.title);
  const about =
    `${title === undefined ? "" : `${model.template.title}, job`} ${identity.job}`.trim();
  const live = "Every figure is a live formula: change a boxed cell and it follows.";
  put(2, 1, `${title === undefined ? "Job " : ""}${about}. ${live}`, styles.purpose);
  if (customer !== undefined) {
    const value = `For ${valueAt(customer) ?? ""}`;
    shown(3, 1, `"For "&${customer}`, value, styles.strongLabel);
  }
  let line = customer === undefined ? 4 : 5;
  const standing = valueAt("bid_standing");
  sheet.mergeCells(line, 1, line, 3);
  shown(line, 1, "bid_standing", standing, styles.standing);
  sheet.getRow(line).height = textHeight(String(standing ?? ""), 100) + 4;
  const faulty = `LEFT(A${line},${notStanding.length})="${notStanding}"`;
  sheet.addConditionalFormatting({ ref: `A${line}:C${line}`, rules: [attention(faulty)] });
  line += 2;
  const heading = (text: string) => {
    for (let column = 1; column <= 3; column++) sheet.getCell(line, column).style = styles.heading;
    sheet.getCell(line, 1).value = text;
    line += 1;
  };
  heading("Bid summary");
  for (const name of [...model.template.headline, "errors_found", "checks_failed", "warnings"]) {
    const cell = model.byId.get(name) as Cell;
    put(line, 1, cell.declaration.label, styles.label);
    const target = sheet.getCell(line, 2);
    target.value = formulaContent(name, values[cell.index] ?? null);
    target.style = { ...styles.strong, numFmt: numberFormat(cell.declaration, model.system) };
    put(line, 3, shownUnit(cell.declaration, model.system), styles.unit);
    sheet.getRow(line).height = textHeight(cell.declaration.label, 44);
    line += 1;
  }
  line += 1;
  heading("Errors and warnings (all are on sheet Checks)");
  const listed = Math.min(firstFailing, model.tables.get(checkShown)?.block.rows ?? 0);
  for (let row = 1; row <= listed; row++) {
    const at = (key: string) => `INDEX(${checkShown}.${key},${row})`;
    const state = valueAt(`${checkShown}.state[${row}]`);
    ["check", "sheet", "message"].forEach((key, i) => {
      const value = state === "ok" ? "" : valueAt(`${checkShown}.${key}[${row}]`);
      shown(line, i + 1, `IF(${at("state")}="ok","",${at(key)})`, value, { ...styles.message });
      if (key === "message") sheet.getRow(line).height = textHeight(String(value ?? ""), 64);
    });
    line += 1;
  }
  line += 1;
  heading("Sheets");
  for (const { name, purpose } of model.sheets) {
    sheet.getCell(line, 1).value = formulaContent(`HYPERLINK("#'${name}'!A1","${name}")`, name);
    sheet.getCell(line, 1).style = styles.label;
    sheet.mergeCells(line, 2, line, 3);
    put(line, 2, purpose, styles.note);
    line += 1;
  }
  line += 1;
  heading("Kinds of cells");
  const legend: [string, object, string][] = [
    ["boxed and tinted", styles.input, "An input: yours to change. The cell says what it accepts."],
    [
      "dotted box",
      styles.book,
      "Copied from the price book: change it there, or see the difference in the audit.",
    ],
    [
      "in italics",
      styles.published,
      "From a published table or standard; the source stands beside it.",
    ],
    ["plain", styles.figure, "A formula. Protected without a password: look at it as you like."],
    [
      "yes or no, bold",
      styles.check,
      "A check. A no comes with a sentence on what to do; all are on sheet Checks.",
    ],
  ];
  for (const [text, style, meaning] of legend) {
    put(line, 1, text, style);
    sheet.mergeCells(line, 2, line, 3);
    put(line, 2, meaning, styles.note);
    line += 1;
  }
  line += 1;
  heading("Template and price book");
  const origin: [string, string][] = [
    [
      "Template",
      `${identity.template}, version ${identity.version}, ${identity.units === "us" ? "US customary units" : "SI units"}`,
    ],
    ["Price book", `${identity.book}, as of ${identity.bookAsOf}`],
    ...(identity.about === undefined
      ? []
      : [["About this job", identity.about] as [string, string]]),
  ];
  for (const [label, text] of origin) {
    put(line, 1, label, styles.label);
    sheet.mergeCells(line, 2, line, 3);
    put(line, 2, text, styles.note);
    line += 1;
  }
  sheet.pageSetup = { orientation: "portrait", fitToPage: true, fitToWidth: 1, fitToHeight: 0 };
}
