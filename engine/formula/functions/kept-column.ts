import { isPlainlySame, type Value } from "../value.js";

/**
 * What is made of a column, kept for as long as its cells hold what they held: thousands of formulas look through
 * the same columns, and to see that nothing changed takes less than to look.
 */
export class KeptColumns<Made> {
  /** By the place of the first cell. */
  readonly #known = new Map<number, { readonly held: readonly Value[]; readonly made: Made }>();

  constructor(private readonly make: (column: readonly Value[]) => Made) {}

  of(values: readonly Value[], from: number, rows: number): Made {
    const known = this.#known.get(from);
    if (known !== undefined && isHeld(known.held, values, from, rows)) return known.made;
    const held = values.slice(from, from + rows);
    const made = this.make(held);
    this.#known.set(from, { held, made });
    return made;
  }
}

function isHeld(
  held: readonly Value[],
  values: readonly Value[],
  from: number,
  rows: number,
): boolean {
  if (held.length !== rows) return false;
  for (let i = 0; i < rows; i++) {
    if (!isPlainlySame(held[i] as Value, values[from + i] as Value)) return false;
  }
  return true;
}
