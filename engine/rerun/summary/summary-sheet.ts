import { styles } from "../../workbook/write/look.js";
import type { Results } from "../results.js";
import type { Pair, Totals } from "../running-totals.js";
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
  const headings = sectionHeadings([...totals.sections.keys()]);
  const section = (label: string) => rangeOf("Sections", headings, label, totals.jobs);
  const chosen = column("In totals");
  const sum = (label: string, result: number): Content => ({
    formula: `SUMIF(${chosen},1,${column(label)})`,
    result,
  });
  sheet.add(
    changed(
      sheet,
      "Price",
      totals.price,
      sum("Price before", totals.price.before),
      sum("Price now", totals.price.now),
    ),
  );
  sheet.add(
    changed(
      sheet,
      "Cost",
      totals.cost,
      sum("Cost before", totals.cost.before),
      sum("Cost now", totals.cost.now),
    ),
  );
  addMargin(sheet, totals);
  heading(sheet, "Sections");
  for (const [label, pair] of totals.sections) {
    const part = (name: string, result: number): Content => ({
      formula: `SUMIF(${section("In totals")},1,${section(name)})`,
      result,
    });
    sheet.add(
      changed(sheet, label, pair, part(before(label), pair.before), part(now(label), pair.now)),
    );
  }
  heading(sheet, "Counts");
  const count = (label: string, content: Content) => counted(sheet, label, content);
  count("Jobs", { formula: `COUNTA(${column("File")})`, result: totals.jobs });
  count("Jobs in the totals", { formula: `SUM(${chosen})`, result: totals.compared });
  count("Files that gave no result", totals.errors);
  count("Jobs left out by filters", totals.skipped);
  count("Checks that newly fail", {
    formula: `SUM(${column("Checks newly failing")})`,
    result: totals.newlyFailing,
  });
  count("Jobs with such checks", {
    formula: `COUNTIF(${column("Checks newly failing")},">0")`,
    result: totals.jobsNewlyFailing,
  });
  count("Jobs that do not stand: cells in error", totals.jobsInError);
  count("Quotes expired", { formula: `SUM(${column("Quotes expired")})`, result: totals.expired });
  count("Jobs with expired quotes", {
    formula: `COUNTIF(${column("Quotes expired")},">0")`,
    result: totals.jobsExpired,
  });
  count("Job numbers that several files have", totals.duplicates);
  count("Jobs calculated twice, by two evaluators that agreed", totals.judged);
  if (results.runs[0]?.moved) addMoved(sheet, totals);
  sheet.end(false);
}

function purposeOf({ runs }: Results, totals: Totals): string {
  const [run] = runs;
  const partial = !totals.whole ? "PARTIAL RESULT, the run was stopped. " : "";
  const versions =
    run?.versions === "newest"
      ? "the newest version of each template"
      : "each job's own template version";
  return `${partial}Old jobs under the price book ${run?.book.name} of ${run?.book.asOf} (mark ${run?.book.mark.slice(0, 8)}), by ${versions}.`;
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
