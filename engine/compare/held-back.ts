import type { OpenedJob } from "../audit/index.js";
import { calculate } from "../evaluate/calculate.js";
import type { Value } from "../formula/value.js";
import { columnOf, type Table } from "../template/model.js";
import type { Comparison } from "./compare.js";

/** Changes that are the office's own affair: its margin, crew, rates, and the prices of its book. */
export interface OfficeChanges {
  /** In words: `Margin (margin_wanted) 20.0% to 25.0%`. */
  readonly words: readonly string[];
  /** The values of the second job as they would be without them. */
  readonly without: readonly Value[];
}

export const belongs = (id: string, name: string): boolean =>
  id === name || id.startsWith(`${name}[`) || id.startsWith(`${name}.`);

/** What the office changed for itself between two jobs; undefined where that is nothing. */
export function officeChanges({ a, b, inputs, prices }: Comparison): OfficeChanges | undefined {
  const { office = [] } = b.model.template.roles ?? {};
  const own = inputs.filter(({ id }) => office.some((name) => belongs(id, name)));
  if (own.length === 0 && prices.length === 0) return undefined;
  const given = b.model.cells.map((cell) =>
    cell.native === undefined ? (b.values[cell.index] ?? null) : null,
  );
  for (const { id, old } of own) given[b.model.byId.get(id)?.index as number] = old;
  for (const table of b.model.tables.values()) {
    if (table.block.from !== undefined) putOldPrices(a, b, table, given);
  }
  const priced = prices.length === 1 ? "1 figure" : `${prices.length} figures`;
  return {
    words: [
      ...own.map(
        ({ id, label, oldShown, newShown }) => `${label} (${id}) ${oldShown} to ${newShown}`,
      ),
      ...(prices.length === 0 ? [] : [`${priced} of the office book`]),
    ],
    without: calculate(b.model, given),
  };
}

/** The lines that both jobs carry get the first one's figures; a new line keeps its own. */
function putOldPrices(a: OpenedJob, b: OpenedJob, table: Table, given: Value[]): void {
  const before = a.model.tables.get(table.name);
  if (before === undefined || !before.columns.has("code") || !table.columns.has("code")) return;
  const codes = ({ model, values }: OpenedJob) =>
    columnOf(model, table.name, "code").cells.map(({ index }) =>
      String(values[index] ?? "").toLowerCase(),
    );
  const old = codes(a);
  codes(b).forEach((code, row) => {
    const at = old.indexOf(code);
    if (code === "" || at < 0) return;
    for (const { key, cells, declaration } of table.columns.values()) {
      const [from, to] = [before.columns.get(key)?.cells[at], cells[row]];
      if (declaration.kind === "book" && from !== undefined && to !== undefined) {
        given[to.index] = a.values[from.index] ?? null;
      }
    }
  });
}
