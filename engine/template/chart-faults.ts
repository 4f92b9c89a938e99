import { type ChartBlock, chartsOf, isBar, type Series } from "./chart.js";
import type { Block, CellDeclaration, TableBlock } from "./declare.js";

/** What stands behind a name in a chart: a column of a table, or a single cell. */
interface Named {
  readonly rows: number;
  readonly declaration: CellDeclaration;
}

type Find = (name: string) => Named | undefined;

/**
 * What charts ask for that no workbook can draw, or not truly: names that stand for nothing,
 * columns of unlike rows, figures of several units along one axis, bars beside lines.
 */
export function chartFaults(
  blocks: readonly Block[],
  tables: ReadonlyMap<string, TableBlock>,
): string[] {
  const singles = new Map(
    blocks.flatMap((one) => ("cells" in one ? Object.entries(one.cells) : [])),
  );
  const find = (name: string): Named | undefined => {
    const single = singles.get(name);
    if (single !== undefined) return { rows: 1, declaration: single };
    const [from = "", key = ""] = name.split(".");
    const table = tables.get(from);
    if (table === undefined || !Object.hasOwn(table.columns, key)) return undefined;
    return { rows: table.rows, declaration: table.columns[key] as CellDeclaration };
  };
  return blocks.flatMap((block) =>
    block.kind === "chart" ? chartsOf(block).flatMap((one) => faultsOf(one, find)) : [],
  );
}

function faultsOf(block: ChartBlock, find: Find): string[] {
  const chart = `The chart "${block.heading}"`;
  const faults = block.series.flatMap((series) => [
    ...rowFaults(chart, series, find),
    ...textFaults(chart, series),
  ]);
  const barred = block.series.filter(isBar).length;
  if (barred > 0 && barred < block.series.length) {
    faults.push(`${chart} has bars beside lines or points. Make two charts of it.`);
  }
  const across = barred > 0 ? [] : block.series.map(({ x }) => x);
  const up = block.series.map(({ y }) => y);
  return [...faults, ...axisFaults(chart, across, find), ...axisFaults(chart, up, find)];
}

function rowFaults(chart: string, { x, y, says }: Series, find: Find): string[] {
  const names = [x, y, ...(typeof says === "string" ? [says] : [])];
  const missing = names.filter((name) => find(name) === undefined);
  if (missing.length > 0) {
    return missing.map(
      (name) => `${chart} names "${name}", which is no column or single cell of this template.`,
    );
  }
  return new Set(names.map((name) => find(name)?.rows)).size > 1
    ? [`${chart} joins ${names.join(" and ")}, which have not as many rows.`]
    : [];
}

/** An axis has one scale: what is drawn along it is in one unit. */
function axisFaults(chart: string, names: readonly string[], find: Find): string[] {
  const units = new Map<string, string>();
  for (const name of names) {
    const quantity = find(name)?.declaration.quantity;
    if (quantity === undefined) continue;
    if (quantity.kind !== "number") return [`${chart} draws "${name}", which holds no numbers.`];
    const unit = `${quantity.units.us.name}|${quantity.units.si.name}`;
    units.set(unit, units.get(unit) ?? name);
  }
  return units.size > 1
    ? [
        `${chart} draws ${[...units.values()].join(" and ")} along one axis, in different units. Give it a cell in the unit of the others.`,
      ]
    : [];
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
