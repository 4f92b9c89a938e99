import { type ChartBlock, isBar, type Series } from "./chart.js";
import type { TableBlock } from "./declare.js";

type Tables = ReadonlyMap<string, TableBlock>;

/**
 * What a chart asks for that no workbook can draw: names that stand for nothing, columns of
 * unlike rows, bars beside lines.
 */
export function chartFaults(
  block: ChartBlock,
  singles: ReadonlySet<string>,
  tables: Tables,
): string[] {
  const chart = `The chart "${block.heading}"`;
  const faults: string[] = [];
  const rowsOf = (name: string): number => {
    const rows = singles.has(name) ? 1 : columnRows(name, tables);
    if (rows === undefined) {
      faults.push(`${chart} names "${name}", which is no column or single cell of this template.`);
    }
    return rows ?? 0;
  };
  for (const series of block.series) {
    const names = [series.x, series.y, ...(typeof series.says === "string" ? [series.says] : [])];
    const rows = names.map(rowsOf);
    if (new Set(rows).size > 1 && !rows.includes(0)) {
      faults.push(`${chart} joins ${names.join(" and ")}, which have not as many rows.`);
    }
    faults.push(...textFaults(chart, series));
  }
  const barred = block.series.filter(isBar).length;
  if (barred > 0 && barred < block.series.length) {
    faults.push(`${chart} has bars beside lines or points. Make two charts of it.`);
  }
  return faults;
}

function textFaults(chart: string, series: Series): string[] {
  const { label, says, marks } = series;
  if (marks === "names" && typeof says !== "string") {
    return [`${chart}: the names "${label}" have no column or cell of texts. Give "says" one.`];
  }
  if (typeof says === "string" && isBar(series)) {
    return [`${chart}: the bars "${label}" show their figures: write "says: true".`];
  }
  return says === true && !isBar(series)
    ? [`${chart}: "${label}" needs a column or cell of texts in "says".`]
    : [];
}

function columnRows(name: string, tables: Tables): number | undefined {
  const [table = "", key = ""] = name.split(".");
  const found = tables.get(table);
  return found !== undefined && Object.hasOwn(found.columns, key) ? found.rows : undefined;
}
