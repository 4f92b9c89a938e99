import { columnLetters } from "../../address.js";
import type { Value } from "../../formula/value.js";
import { openFields } from "../../job/missing.js";
import { notReady } from "../../template/bid-stands.js";
import type { ChartBlock } from "../../template/chart.js";
import { checkList, holds, ranks } from "../../template/checks-sheet.js";
import { type Cell, columnOf, type Model } from "../../template/model.js";
import type { Book } from "./book/book.js";
import { changed } from "./book/changed.js";
import type { Content, Look } from "./book/sheet.js";
import { type ChartPlace, placeOver, summaryCharts } from "./charts/places.js";
import { footOf } from "./foot.js";
import { textHeight } from "./grid.js";
import type { Identity } from "./identity.js";
import { attention, styles } from "./look.js";
import { numberFormat, shownUnit } from "./number-format.js";
import { gridColumns, gridWidths, lettersOver, SummaryGrid } from "./summary-grid.js";
import { missingLines, rowLines } from "./summary-missing.js";

/** How many of the failed checks the sheet shows. */
const firstFailing = 8;
/** Lines of the sheet that the drawing and the other charts cover. */
const drawingLines = 13;
/** A drawing to scale that is less wide than this for its height is higher, to be as large as others. */
const wide = 2.5;
const tallDrawingLines = 18;
const chartLines = 11;
const lineHeight = 15;

const half = gridColumns / 2;

const legend: readonly [kind: string, style: Look, meaning: string][] = [
  ["boxed and tinted", styles.input, "an input, yours to change"],
  ["dotted box", styles.book, "copied from the office book"],
  ["in italics", styles.published, "published, with its source"],
  ["plain", styles.figure, "a formula, protected without a password"],
];

/**
 * The first sheet, on one page: whether the bid stands, what it comes to, what is still open, where things are.
 * Returns the charts that it left room for.
 */
export function writeSummary(
  book: Book,
  model: Model,
  values: readonly Value[],
  identity: Identity,
): ChartPlace[] {
  const sheet = book.addSheet("Summary", {
    defaultRowHeight: lineHeight,
    view: { showGridLines: false },
  });
  const page = new SummaryPage(new SummaryGrid(sheet), model, values);
  page.title(identity);
  page.state();
  page.missing();
  page.figures();
  const charts = page.charts();
  page.open();
  page.origin(identity);
  // what follows helps on the screen alone
  const printed = page.last;
  page.sheets();
  page.legend();
  sheet.pageSetup = {
    orientation: "portrait",
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 1,
    margins: { left: 0.6, right: 0.6, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 },
    printArea: `A$1:${columnLetters(gridColumns)}$${printed}`,
  };
  sheet.footer = footOf(identity, { handout: false });
  return charts;
}

/** The sheet as it is written, from the top down. */
class SummaryPage {
  /** Where the first fields are listed that are blank; empty where a job has none. */
  private fields = "";

  constructor(
    private readonly grid: SummaryGrid,
    private readonly model: Model,
    private readonly values: readonly Value[],
  ) {}

  get last(): number {
    return this.grid.line - 1;
  }

  /** The title of the job and the customer, where the template names them. */
  title({ job }: Identity): void {
    const { grid } = this;
    const { template } = this.model;
    const { title, customer } = template.roles ?? {};
    const heads = title === undefined ? template.title : String(this.valueAt(title) ?? "");
    grid.height((textHeight(heads, lettersOver(gridColumns) * 0.55) - 2) * 1.7 + 2);
    if (title === undefined) grid.put(1, gridColumns, template.title, styles.title);
    else grid.formula(1, gridColumns, `${title}&""`, this.valueAt(title) ?? "", styles.title);
    grid.line += 1;
    const about = `${title === undefined ? "" : `${template.title}, job`} ${job}`.trim();
    const said = `${title === undefined ? "Job " : ""}${about}.`;
    grid.put(1, gridColumns, said, styles.purpose);
    grid.line += 1;
    if (customer !== undefined) {
      const value = `For ${this.valueAt(customer) ?? ""}`;
      grid.formula(1, gridColumns, `"For "&${customer}`, value, styles.strongLabel);
      grid.line += 1;
    }
    grid.line += 1;
  }

  /** Whether the bid is ready; while first fields are missing, which of them is next. */
  state(): void {
    const { grid, model, values } = this;
    const { line, sheet } = grid;
    const fields = missingLines(model, values);
    const from = line + 3;
    const at = (i: number) =>
      `${i % 2 === 0 ? "A" : columnLetters(1 + half)}${from + Math.floor(i / 2)}`;
    const until = from + Math.ceil(fields.length / 2) - 1;
    this.fields = fields.length === 0 ? "" : `A${from}:${columnLetters(gridColumns)}${until}`;
    const next = fields.reduceRight(
      (rest, _, i) => `IF(LEN(${at(i)})>0,"${notReady}: next is "&${at(i)},${rest})`,
      "bid_verdict",
    );
    const first = fields.find(({ value }) => value !== "");
    const verdict = String(this.valueAt("bid_verdict") ?? "");
    const state = first === undefined ? verdict : `${notReady}: next is ${first.value}`;
    grid.formula(1, gridColumns, next, state, styles.verdict);
    grid.height(textHeight(verdict, lettersOver(gridColumns) * 0.8) * 1.25 + 4);
    const faulty = `LEFT(A${line},${notReady.length})="${notReady}"`;
    sheet.addConditionalFormatting({
      ref: `A${line}:${columnLetters(gridColumns)}${line}`,
      rules: [attention(faulty)],
    });
    grid.line += 2;
  }

  /** What is still missing: the first fields, each leading to its cell, then rows that somebody has begun. */
  missing(): void {
    const { grid, model, values } = this;
    const fields = missingLines(model, values);
    if (fields.length === 0) return;
    const from = grid.line;
    grid.heading("Still missing, in the order of the walk");
    fields.forEach(({ formula, value }, i) => {
      const side = i % 2 === 0 ? 1 : 1 + half;
      grid.formula(side, half, formula, value, styles.link);
      if (side !== 1 || i === fields.length - 1) grid.line += 1;
    });
    const isComplete = fields.every(({ value }) => value === "");
    // a field that is blanked later is told above, and as an input at fault
    for (let line = from; isComplete && line < grid.line; line++) {
      grid.sheet.getRow(line).hidden = true;
    }
    for (const { formula, value } of rowLines(model, values)) {
      const text = this.isComplete ? value : "";
      grid.formula(1, gridColumns, `IF(${this.complete},${formula},"")`, text, styles.message);
      grid.height(textHeight(text, lettersOver(gridColumns)));
      grid.line += 1;
    }
    grid.line += 1;
  }

  /** Formula: the job is described, as the template says it; without that, no first field is blank. */
  private get complete(): string {
    return this.model.template.roles?.described ?? `SUMPRODUCT((${this.fields}<>"")*1)=0`;
  }

  /** What that shows now. */
  private get isComplete(): boolean {
    const { described } = this.model.template.roles ?? {};
    if (described !== undefined) return this.valueAt(described) === true;
    return openFields(this.model, this.values).length === 0;
  }

  /** A figure of the headline; none of what is not yet described, which would be no price. */
  private headline(name: string, value: Value): { formula: string; value: Value } {
    const { headline } = this.model.template;
    if (this.fields === "" || !headline.includes(name)) return { formula: name, value };
    const shown = this.isComplete ? value : "–";
    return { formula: `IF(${this.complete},${name},"–")`, value: shown };
  }

  /** The headline in two halves, and how much is at fault. */
  figures(): void {
    const { grid, model, values } = this;
    const { headline, learns } = model.template;
    grid.heading(learns === undefined ? "Bid summary" : "What was learned");
    const rows = Math.ceil(headline.length / 2);
    const beside = ["errors_found", "checks_failed", "warnings"];
    const left = [...headline.slice(0, rows), ...beside.slice(0, 2)];
    const right = [...headline.slice(rows)];
    while (right.length < rows) right.push("");
    right.push(beside[2] as string);
    for (let row = 0; row < left.length; row++) {
      for (const [side, name] of [
        [1, left[row]],
        [1 + half, right[row]],
      ] as const) {
        if (name === undefined || name === "") continue;
        const cell = model.byId.get(name) as Cell;
        const { declaration } = cell;
        grid.put(side, 3, declaration.label, styles.label);
        const numFmt = numberFormat(declaration, model.system);
        const said = this.headline(name, values[cell.index] ?? null);
        const alignment = { ...styles.strong.alignment, horizontal: "right" } as const;
        const look = changed(styles.strong, { numFmt, alignment });
        grid.formula(side + 3, 2, said.formula, said.value, look);
        grid.put(side + 5, 1, shownUnit(declaration, model.system), styles.unit);
      }
      grid.line += 1;
    }
    grid.line += 1;
  }

  /** Leaves room for the charts: the first one, a drawing, over the whole width; the others below it, side by side. */
  charts(): ChartPlace[] {
    const [first, ...others] = summaryCharts(this.model);
    if (first === undefined) return [];
    const lines = (first.ratio ?? wide) < wide ? tallDrawingLines : drawingLines;
    return [...this.rowOfCharts([first], lines), ...this.rowOfCharts(others, chartLines)];
  }

  private rowOfCharts(charts: readonly ChartBlock[], lines: number): ChartPlace[] {
    const { grid } = this;
    const line = grid.line;
    if (charts.length > 0) grid.line += lines + 1;
    const over = Math.floor(gridColumns / charts.length);
    return charts.map((block, i) =>
      placeOver(
        block,
        grid.sheet.name,
        { line, column: i * over, over },
        gridWidths,
        lines * lineHeight,
      ),
    );
  }

  /** The first checks of those that fail, each leading to where it is mended. */
  open(): void {
    const { grid, model, values } = this;
    grid.heading("Errors and warnings (all are on sheet Checks)");
    const column = (key: string) => columnOf(model, checkList, key).cells;
    const found = column("rank").map(({ index }) => values[index] as number);
    const inTurn = found.map((_, i) => i).sort((a, b) => (found[a] ?? 0) - (found[b] ?? 0));
    for (let row = 1; row <= Math.min(firstFailing, found.length); row++) {
      const place = `MATCH(SMALL(${checkList}.rank,${row}),${checkList}.rank,0)`;
      // the one row of a list of one check is no list to pick from: engine/template/one-row.ts
      const at = (key: string) =>
        found.length > 1 ? `INDEX(${checkList}.${key},${place})` : `${checkList}.${key}`;
      const toldOf = (key: string) =>
        values[column(key)[inTurn[row - 1] as number]?.index as number];
      const fails = !holds(toldOf("rank"));
      const shown = (formula: string) =>
        `IF(SMALL(${checkList}.rank,${row})>=${ranks.holds},"",${formula})`;
      const said = fails ? `${toldOf("sheet")}: ${toldOf("check")}` : "";
      const name = `${at("sheet")}&": "&${at("check")}`;
      grid.formula(1, 4, shown(`HYPERLINK("#"&${at("goes")},${name})`), said, styles.openItem);
      const message = fails ? String(toldOf("message") ?? "") : "";
      grid.formula(5, gridColumns - 4, shown(at("message")), message, styles.message);
      const heights = [textHeight(said, lettersOver(4)), textHeight(message, lettersOver(8) * 1.1)];
      if (fails) grid.height(Math.max(lineHeight, ...heights));
      grid.line += 1;
    }
    grid.line += 1;
  }

  /** A link to each sheet in sight; the others by name, and how to show them. */
  sheets(): void {
    const { grid } = this;
    grid.heading("Sheets");
    const { sheets } = this.model;
    const inSight = sheets.filter(({ hidden }) => !hidden).map(({ name }) => name);
    const links = [...inSight, "Trail", "Names"];
    const perRow = gridColumns / 2;
    links.forEach((name, i) => {
      const link = `HYPERLINK("#'${name}'!A1","${name}")`;
      grid.formula(1 + (i % perRow) * 2, 2, link, name, styles.link);
      if (i % perRow === perRow - 1 || i === links.length - 1) grid.line += 1;
    });
    const unseen = sheets.filter(({ hidden }) => hidden).map(({ name }) => name);
    if (unseen.length > 0) {
      const howTo = `Hidden, for reference: ${unseen.join(", ")}. To show one: right-click a tab, Unhide (or Show Sheet).`;
      this.note(howTo);
    }
    grid.line += 1;
  }

  /** How kinds of cells look. */
  legend(): void {
    const { grid } = this;
    grid.heading("Kinds of cells");
    this.note("Every figure is a live formula: change a boxed cell and it follows.");
    const over = gridColumns / legend.length;
    legend.forEach(([kind, style], i) => {
      grid.put(1 + i * over, over, kind, style);
    });
    grid.line += 1;
    legend.forEach(([, , meaning], i) => {
      grid.put(1 + i * over, over, meaning, styles.note);
    });
    grid.height(
      textHeight(
        legend.map(([, , one]) => one).sort((a, b) => b.length - a.length)[0] ?? "",
        lettersOver(over),
      ),
    );
    grid.line += 2;
  }

  /** The template, the office book, and what the job says of itself. */
  origin({ template, version, units, book, bookAsOf, about }: Identity): void {
    const system = units === "us" ? "US customary units" : "SI units";
    this.pair("Template", `${template}, version ${version}, ${system}`);
    this.pair("Office book", `${book}, as of ${bookAsOf}`);
    if (about !== undefined) this.pair("About this job", about);
    this.grid.line += 1;
  }

  private pair(label: string, text: Content): void {
    const { grid } = this;
    grid.put(1, 2, label, styles.note);
    grid.put(3, gridColumns - 2, text, styles.note);
    grid.height(textHeight(String(text), lettersOver(gridColumns - 2) * 1.1));
    grid.line += 1;
  }

  private note(text: string): void {
    const { grid } = this;
    grid.put(1, gridColumns, text, styles.note);
    grid.height(textHeight(text, lettersOver(gridColumns) * 1.1));
    grid.line += 1;
  }

  private valueAt(id: string): Value {
    return this.values[this.model.byId.get(id)?.index as number] ?? null;
  }
}
