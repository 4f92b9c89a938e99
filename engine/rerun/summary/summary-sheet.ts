import { styles } from "../../workbook/write/look.js";
import type { BuiltTotals } from "../built-totals.js";
import type { Results } from "../results.js";
import type { Pair, Totals } from "../running-totals.js";
import { builtHeadings, builtSheet } from "./built-sheet.js";
import { jobHeadings } from "./jobs-sheet.js";
import { movedHeadings, together } from "./lists.js";
import { before, now, sectionHeadings } from "./sections-sheet.js";
import {
  type Content,
  dollars,
  type ExcelWriter,
  firstRow,
  rangeOf,
  SheetWriter,
  share,
} from "./sheet-writer.js";

/** Items shown by name; the sheet Moved has all. */
const itemsShown = 40;

/** The sums over all jobs, as live formulas over the lists. */
export function writeTotals(book: ExcelWriter, results: Results, totals: Totals): void {
  const sheet = new SheetWriter(book, "Totals", purposeOf(results, totals), [
    { label: "Of the jobs in the totals", width: 44 },
    { label: "Before", width: 18, format: dollars },
    { label: "Now", width: 18, format: dollars },
    { label: "Change", width: 18, format: dollars },
    { label: "Change in %", width: 12, format: share },
  ]);
  const column = (label: string) => rangeOf("Jobs", jobHeadings, label, totals.jobs);
  addMoney(sheet, totals, column);
  addSections(sheet, totals);
  addCounts(sheet, totals, column);
  if (totals.built.rows > 0) addBuilt(sheet, totals.built);
  if (results.runs[0]?.moved) addMoved(sheet, totals);
  sheet.end(false);
}

/** A column of a list, by its heading. */
type Column = (label: string) => string;

/** The sum of a column over the jobs in the totals. */
const sumOf = (column: Column, label: string, result: number): Content => ({
  formula: `SUMIF(${column("In totals")},1,${column(label)})`,
  result,
});

function addMoney(sheet: SheetWriter, totals: Totals, column: Column): void {
  for (const [label, pair] of [
    ["Price", totals.price],
    ["Cost", totals.cost],
  ] as const) {
    const [first, second] = [`${label} before`, `${label} now`];
    sheet.add(
      changed(
        sheet,
        label,
        pair,
        sumOf(column, first, pair.before),
        sumOf(column, second, pair.now),
      ),
    );
  }
  addMargin(sheet, totals);
}

function addSections(sheet: SheetWriter, totals: Totals): void {
  const headings = sectionHeadings([...totals.sections.keys()]);
  const column = (label: string) => rangeOf("Sections", headings, label, totals.jobs);
  heading(sheet, "Sections");
  for (const [label, pair] of totals.sections) {
    const first = sumOf(column, before(label), pair.before);
    sheet.add(changed(sheet, label, pair, first, sumOf(column, now(label), pair.now)));
  }
}

function addCounts(sheet: SheetWriter, totals: Totals, column: Column): void {
  const [failing, expired] = [column("Checks newly failing"), column("Quotes expired")];
  const counts: readonly (readonly [string, Content])[] = [
    ["Jobs", { formula: `COUNTA(${column("File")})`, result: totals.jobs }],
    ["Jobs in the totals", { formula: `SUM(${column("In totals")})`, result: totals.compared }],
    ["Files that gave no result", totals.errors],
    ["Jobs left out by filters", totals.skipped],
    ["Checks that newly fail", { formula: `SUM(${failing})`, result: totals.newlyFailing }],
    [
      "Jobs with such checks",
      { formula: `COUNTIF(${failing},">0")`, result: totals.jobsNewlyFailing },
    ],
    ["Jobs that do not stand: cells in error", totals.jobsInError],
    ["Quotes expired", { formula: `SUM(${expired})`, result: totals.expired }],
    [
      "Jobs with expired quotes",
      { formula: `COUNTIF(${expired},">0")`, result: totals.jobsExpired },
    ],
    ["Job numbers that several files have", totals.duplicates],
    ["Jobs calculated twice, by two evaluators that agreed", totals.judged],
  ];
  heading(sheet, "Counts");
  for (const [label, content] of counts) counted(sheet, label, content);
}

function purposeOf({ runs }: Results, totals: Totals): string {
  const [run] = runs;
  const partial = !totals.whole ? "PARTIAL RESULT, the run was stopped. " : "";
  const versions =
    run?.versions === "newest"
      ? "the newest version of each template"
      : "each job's own template version";
  return `${partial}Old jobs under the office book ${run?.book.name} of ${run?.book.asOf} (mark ${run?.book.mark.slice(0, 8)}), by ${versions}.`;
}

function heading(sheet: SheetWriter, label: string): void {
  sheet.add([]);
  sheet.heading(label);
}

function changed(
  sheet: SheetWriter,
  label: string,
  pair: Pair,
  first: Content,
  second: Content,
): Content[] {
  const at = sheet.next;
  const change = pair.now - pair.before;
  return [
    label,
    first,
    second,
    { formula: `C${at}-B${at}`, result: change },
    {
      formula: `IF(B${at}=0,0,D${at}/B${at})`,
      result: pair.before === 0 ? 0 : change / pair.before,
    },
  ];
}

/** Price and cost stand in the first two rows. */
function addMargin(sheet: SheetWriter, { price, cost }: Totals): void {
  const [priceRow, costRow, at] = [firstRow, firstRow + 1, sheet.next];
  const margin = (key: "before" | "now") => (price[key] === 0 ? 0 : 1 - cost[key] / price[key]);
  const content = (column: string, key: "before" | "now"): Content => ({
    formula: `IF(${column}${priceRow}=0,0,1-${column}${costRow}/${column}${priceRow})`,
    result: margin(key),
  });
  sheet.line(
    at,
    [
      "Margin (price less cost, as a share of price), and its drift",
      content("B", "before"),
      content("C", "now"),
      { formula: `C${at}-B${at}`, result: margin("now") - margin("before") },
    ],
    [styles.plain, ...[1, 2, 3].map(() => ({ ...styles.plain, numFmt: share }))],
  );
  sheet.skip();
}

function counted(sheet: SheetWriter, label: string, content: Content): void {
  sheet.line(sheet.next, [label, content], [styles.plain, { ...styles.plain, numFmt: "#,##0" }]);
  sheet.skip();
}

/** Built jobs told whole: how far their cost came from the bid, and how many stayed within it. */
function addBuilt(sheet: SheetWriter, built: BuiltTotals): void {
  const column = (label: string) => rangeOf(builtSheet, builtHeadings, label, built.rows);
  const middle = (label: string, result: number | undefined): Content => ({
    formula: `IF(COUNT(${column(label)})=0,"",MEDIAN(${column(label)}))`,
    result: result ?? "",
  });
  const sum = (label: string, result: number): Content => ({
    formula: `SUM(${column(label)})`,
    result,
  });
  heading(sheet, "Jobs told as built, against what they came to");
  counted(sheet, "Jobs told as built", {
    formula: `COUNTA(${column("File")})`,
    result: built.rows,
  });
  counted(sheet, "Told whole, and compared", sum("Compared", built.compared));
  const pair = (label: string, contents: readonly Content[], numFmt: string) => {
    const looks = contents.map(() => ({ ...styles.plain, numFmt }));
    sheet.line(sheet.next, [label, ...contents], [styles.plain, ...looks]);
    sheet.skip();
  };
  pair(
    "Cost came over the bid: middle one",
    [middle("Over the bid, %", built.overBid), middle("Over now, %", built.overNow)],
    share,
  );
  pair(
    "Cost off the bid, over or under: middle one",
    [middle("Off the bid, %", built.offBid), middle("Off now, %", built.offNow)],
    share,
  );
  pair(
    "Stayed within cost and contingency",
    [sum("Within the bid", built.withinBid), sum("Within now", built.withinNow)],
    "#,##0",
  );
  if (built.foretold === 0) return;
  pair(
    "Bid with contingency for P80: stayed within",
    [null, sum("Within P80 now", built.withinFifth)],
    "#,##0",
  );
  const within = column("Within P80 now");
  pair(
    "Share of these; right would be 80%",
    [
      null,
      {
        formula: `IF(COUNT(${within})=0,"",SUM(${within})/COUNT(${within}))`,
        result: built.withinFifth / built.foretold,
      },
    ],
    share,
  );
}

function addMoved(sheet: SheetWriter, totals: Totals): void {
  const list = (label: string) => rangeOf("Moved", movedHeadings, label, totals.movedRows);
  heading(
    sheet,
    `What moved the price, over the ${totals.movedJobs} jobs of which the old prices are known`,
  );
  const shown = totals.moved.slice(0, itemsShown);
  const all = [...shown, { item: together, by: totals.together }];
  for (const { item, by } of all) {
    const at = sheet.next;
    const sum = `SUMIF(${list("Item")},A${at},${list("Moves the price by")})`;
    sheet.add([item, null, null, { formula: sum, result: by }]);
  }
  if (totals.moved.length > itemsShown) {
    sheet.add([`and ${totals.moved.length - itemsShown} smaller ones, on the sheet Moved`]);
  }
}
