import type { CellValue, Workbook, Worksheet } from "exceljs";
import { addressOf, columnLetters } from "../../address.js";
import type { Value } from "../../formula/value.js";
import { firstFields } from "../../job/missing.js";
import { doesNotStand } from "../../template/bid-stands.js";
import { checkShown } from "../../template/checks-sheet.js";
import type { ChartBlock } from "../../template/declare.js";
import { chartLines } from "../../template/layout.js";
import type { Cell, Model } from "../../template/model.js";
import { formulaContent } from "./cells.js";
import { type ChartPlace, placesOf, summaryCharts } from "./charts/places.js";
import { textHeight } from "./grid.js";
import type { Identity } from "./identity.js";
import { attention, styles } from "./look.js";
import { numberFormat, shownUnit } from "./number-format.js";

/** How many of the failed checks the sheet shows. */
const firstFailing = 8;

const columns = [46, 18, 60] as const;
/** A chart leaves room for another one on the first page. */
const mostChartLines = 15;
/** Points of a line of this sheet. */
const lineHeight = 15;

const legend: readonly [kind: string, style: object, meaning: string][] = [
  ["boxed and tinted", styles.input, "An input: yours to change. The cell says what it accepts."],
  [
    "dotted box",
    styles.book,
    "Copied from the office book: change it there, or see the difference in the audit.",
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

/**
 * The first sheet: what this workbook is, the bid in figures, what is still open, where things are.
 * Returns the charts that it left room for.
 */
export function writeSummary(
  workbook: Workbook,
  model: Model,
  values: readonly Value[],
  identity: Identity,
): ChartPlace[] {
  const sheet = workbook.addWorksheet("Summary");
  const page = new SummaryPage(sheet, model, values);
  page.title(identity);
  page.state();
  page.missing();
  page.figures();
  const charts = summaryCharts(model).flatMap((block) => page.chart(block));
  page.open();
  page.part("Sheets", sheetLines(model));
  page.part("Kinds of cells", legend);
  page.part(
    "Template and office book",
    originOf(identity).map(([label, text]) => [label, styles.label, text] as const),
  );
  sheet.pageSetup = { orientation: "portrait", fitToPage: true, fitToWidth: 1, fitToHeight: 0 };
  return charts;
}

/** A link to each sheet in sight; of the others, what they hold and how to show them. */
function sheetLines({ sheets }: Model): (readonly [CellValue, object, string])[] {
  const inSight = sheets.filter(({ hidden }) => !hidden);
  const unseen = sheets.filter(({ hidden }) => hidden);
  const linked = inSight.map(({ name, purpose }) => {
    const link = formulaContent(`HYPERLINK("#'${name}'!A1","${name}")`, name);
    return [link, styles.label, purpose] as const;
  });
  const howTo = "Hidden, for reference. To show one: right-click a tab, Unhide (or Show Sheet).";
  return [
    ...linked,
    ...(unseen.length === 0 ? [] : [["More sheets", styles.strongLabel, howTo] as const]),
    ...unseen.map(({ name, purpose }) => [name, styles.label, purpose] as const),
  ];
}

function originOf({ template, version, units, book, bookAsOf, about }: Identity) {
  const system = units === "us" ? "US customary units" : "SI units";
  const lines: [label: string, text: string][] = [
    ["Template", `${template}, version ${version}, ${system}`],
    ["Office book", `${book}, as of ${bookAsOf}`],
  ];
  if (about !== undefined) lines.push(["About this job", about]);
  return lines;
}

/** The sheet as it is written, from the top down. */
class SummaryPage {
  private line = 1;

  constructor(
    private readonly sheet: Worksheet,
    private readonly model: Model,
    private readonly values: readonly Value[],
  ) {
    columns.forEach((width, i) => {
      sheet.getColumn(i + 1).width = width;
    });
  }

  /** The title of the job and the customer, where the template names them. */
  title({ job }: Identity): void {
    const { template } = this.model;
    const { title, customer } = template.roles ?? {};
    if (title === undefined) this.put(1, template.title, styles.title);
    else this.shown(1, `${title}&""`, this.valueAt(title) ?? "", styles.title);
    this.line += 1;
    const about = `${title === undefined ? "" : `${template.title}, job`} ${job}`.trim();
    const live = "Every figure is a live formula: change a boxed cell and it follows.";
    this.put(1, `${title === undefined ? "Job " : ""}${about}. ${live}`, styles.purpose);
    this.line += 1;
    if (customer !== undefined) {
      const value = `For ${this.valueAt(customer) ?? ""}`;
      this.shown(1, `"For "&${customer}`, value, styles.strongLabel);
      this.line += 1;
    }
    this.line += 1;
  }

  /** Whether the bid stands. */
  state(): void {
    const { sheet, line } = this;
    const state = this.valueAt("bid_verdict");
    sheet.mergeCells(line, 1, line, 3);
    this.shown(1, "bid_verdict", state, styles.verdict);
    sheet.getRow(line).height = textHeight(String(state ?? ""), 100) + 4;
    const faulty = `LEFT(A${line},${doesNotStand.length})="${doesNotStand}"`;
    sheet.addConditionalFormatting({ ref: `A${line}:C${line}`, rules: [attention(faulty)] });
    this.line += 2;
  }

  /** The first fields of a job that are blank, in the order in which they are asked for, each leading to its cell. */
  missing(): void {
    const fields = firstFields(this.model);
    if (fields.length === 0) return;
    this.heading("Still missing, in the order of the walk");
    for (const cell of fields) {
      const { declaration, index, name, sheet, column, line, table } = cell;
      const place = addressOf(column, line);
      const at = table === undefined ? name : `'${sheet}'!$${columnLetters(column)}$${line}`;
      const said = `${declaration.label} (${sheet} ${place})`.replaceAll('"', "");
      const isBlank = (this.values[index] ?? null) === null;
      const link = `IF(ISBLANK(${at}),HYPERLINK("#'${sheet}'!${place}","${said}"),"")`;
      this.shown(1, link, isBlank ? said : "", { ...styles.message });
      this.line += 1;
    }
    this.line += 1;
  }

  /** The headline, and how much is at fault. */
  figures(): void {
    const { sheet, model, values } = this;
    this.heading("Bid summary");
    for (const name of [...model.template.headline, "errors_found", "checks_failed", "warnings"]) {
      const cell = model.byId.get(name) as Cell;
      this.put(1, cell.declaration.label, styles.label);
      const target = sheet.getCell(this.line, 2);
      target.value = formulaContent(name, values[cell.index] ?? null);
      target.style = { ...styles.strong, numFmt: numberFormat(cell.declaration, model.system) };
      this.put(3, shownUnit(cell.declaration, model.system), styles.unit);
      sheet.getRow(this.line).height = textHeight(cell.declaration.label, 44);
      this.line += 1;
    }
    this.line += 1;
  }

  /** The first checks of those that fail. */
  open(): void {
    this.heading("Errors and warnings (all are on sheet Checks)");
    const rows = this.model.tables.get(checkShown)?.block.rows ?? 0;
    for (let row = 1; row <= Math.min(firstFailing, rows); row++) {
      const at = (key: string) => `INDEX(${checkShown}.${key},${row})`;
      const state = this.valueAt(`${checkShown}.state[${row}]`);
      ["check", "sheet", "message"].forEach((key, i) => {
        const value = state === "ok" ? "" : this.valueAt(`${checkShown}.${key}[${row}]`);
        this.shown(i + 1, `IF(${at("state")}="ok","",${at(key)})`, value, { ...styles.message });
        if (key === "message") {
          this.sheet.getRow(this.line).height = textHeight(String(value ?? ""), 64);
        }
      });
      this.line += 1;
    }
    this.line += 1;
  }

  /** Leaves room for a chart. */
  chart(block: ChartBlock): ChartPlace[] {
    const { line, sheet } = this;
    const lines = Math.min(chartLines(block), mostChartLines);
    this.line += lines + 1;
    return placesOf({ ...block, lines, beside: [] }, sheet.name, line, columns, lineHeight);
  }

  /** Lines of a label and a note over the rest of the width. */
  part(
    title: string,
    lines: readonly (readonly [label: CellValue, style: object, note: string])[],
  ): void {
    this.heading(title);
    for (const [label, style, note] of lines) {
      this.put(1, label, style);
      this.sheet.mergeCells(this.line, 2, this.line, 3);
      this.put(2, note, styles.note);
      this.line += 1;
    }
    this.line += 1;
  }

  private heading(text: string): void {
    for (let column = 1; column <= 3; column++) {
      this.sheet.getCell(this.line, column).style = styles.heading;
    }
    this.sheet.getCell(this.line, 1).value = text;
    this.line += 1;
  }

  private valueAt(id: string): Value {
    return this.values[this.model.byId.get(id)?.index as number] ?? null;
  }

  private put(column: number, value: CellValue, style: object): void {
    this.sheet.getCell(this.line, column).value = value;
    this.sheet.getCell(this.line, column).style = style;
  }

  private shown(column: number, formula: string, value: Value, style: object): void {
    this.put(column, formulaContent(formula, value), style);
  }
}
