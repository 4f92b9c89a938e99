/** Results as they are printed and kept. */
export interface Table {
  readonly title: string;
  readonly note: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export const figure = (value: number, decimals = 2): string =>
  value.toLocaleString("en-US", {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });

/** `12.3 times`; a dash where the other program was not measured. */
export const times = (theirs: number, ours: number): string =>
  Number.isFinite(theirs / ours) ? figure(theirs / ours, theirs / ours < 20 ? 1 : 0) : "-";

export function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}

/** A table in Markdown. */
export function markdown({ title, note, heads, rows }: Table): string {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  const rule = line(heads.map((_, i) => (i === 0 ? "---" : "---:")));
  return [`## ${title}`, "", note, "", line(heads), rule, ...rows.map(line), ""].join("\n");
}
