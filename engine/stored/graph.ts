/**
 * Objects that share parts, as plain JSON. Each distinct object is an entry of numbers: its shape, then
 * the places of its values; what is no object is its own entry. A shape is a list of keys, and shape 0 a
 * list. Objects of the same content become one.
 */
export interface PackedGraph {
  readonly shapes: readonly (readonly string[])[];
  readonly entries: readonly Entry[];
}

type Plain = string | number | boolean | null;
type Entry = Plain | readonly number[];

/** Packs objects; `place` gives the place of each among the entries. */
export class GraphPacker implements PackedGraph {
  readonly shapes: string[][] = [[]];
  readonly entries: Entry[] = [];
  readonly #shapes = new Map<string, number>();
  readonly #places = new Map<string, number>();
  readonly #known = new Map<object, number>();

  /** Throws where JSON would not keep a value. A function becomes the words that tell of it. */
  place(value: unknown): number {
    if (typeof value !== "object" || value === null) return this.#entered(plainOf(value));
    const known = this.#known.get(value);
    if (known !== undefined) return known;
    const place = this.#entered(Array.isArray(value) ? this.#list(value) : this.#object(value));
    this.#known.set(value, place);
    return place;
  }

  #list(values: readonly unknown[]): number[] {
    return [0, ...values.map((one) => this.place(one))];
  }

  #object(value: object): number[] {
    if (Object.getPrototypeOf(value) !== Object.prototype) throw new Error("No plain object.");
    const said = Object.entries(value).filter(([, one]) => one !== undefined);
    const keys = said.map(([key]) => key);
    const name = JSON.stringify(keys);
    const shape = this.#shapes.get(name) ?? this.shapes.push(keys) - 1;
    this.#shapes.set(name, shape);
    return [shape, ...said.map(([, one]) => this.place(one))];
  }

  #entered(entry: Entry): number {
    const name = JSON.stringify(entry);
    const place = this.#places.get(name) ?? this.entries.push(entry) - 1;
    this.#places.set(name, place);
    return place;
  }
}

/** What stands for a formula that a declaration gives row by row: the cells hold what was made of it. */
const byRows = "(a formula for each row)";

function plainOf(value: unknown): Plain {
  if (typeof value === "function") return byRows;
  const kept = value === null || ["string", "boolean"].includes(typeof value);
  if (kept || (Number.isFinite(value) && !Object.is(value, -0))) return value as Plain;
  throw new Error(`${String(value)} cannot be kept.`);
}

/** Makes the objects of a packed graph, each when it is first asked for. */
export class Graph {
  readonly #made: unknown[] = [];

  constructor(private readonly packed: PackedGraph) {}

  at(place: number): unknown {
    const entry = this.packed.entries[place];
    if (typeof entry !== "object" || entry === null) return entry;
    this.#made[place] ??= this.#object(entry);
    return this.#made[place];
  }

  #object(entry: readonly number[]): object {
    const [shape] = entry as [number];
    if (shape === 0) {
      const list: unknown[] = [];
      for (let i = 1; i < entry.length; i++) list.push(this.at(entry[i] as number));
      return list;
    }
    const keys = this.packed.shapes[shape] as readonly string[];
    const made: Record<string, unknown> = {};
    for (let i = 1; i < entry.length; i++) {
      made[keys[i - 1] as string] = this.at(entry[i] as number);
    }
    return made;
  }
}
