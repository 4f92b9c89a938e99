import { type Reference, referencesOf, type Tree } from "../formula/tree.js";
import { areaCells } from "../template/area.js";
import { madeCodeOf, type ReadList } from "../template/made-code.js";
import { type Cell, cellOf, columnOf, type Model } from "../template/model.js";

/** Cells that follow one another in the list of values and are read together: a column, or a piece of a sheet's area. */
interface Stretch {
  readonly from: number;
  readonly rows: number;
}

/**
 * What the formulas of a model read. A cell goes by its index, a stretch by its place among the stretches,
 * counted on from the number of cells: thousands of formulas read whole columns, and each of them is one link.
 */
export interface Links {
  /** For each formula, in order of calculation. */
  readonly reads: readonly (readonly number[])[];
  readonly stretches: readonly Stretch[];
  /** The stretches in which each cell stands. */
  readonly within: Lists;
}

/** Lists of numbers, one behind the other: that of `i` stands in `all` from `from[i]` up to `from[i + 1]`. */
export interface Lists {
  readonly from: Uint32Array;
  readonly all: Uint32Array;
}

/** So many lists; `each` calls back with the list and the number to put into it, twice alike. */
export function listsOf(
  count: number,
  each: (put: (list: number, value: number) => void) => void,
): Lists {
  const from = new Uint32Array(count + 1);
  each((list) => {
    from[list + 1] = (from[list + 1] as number) + 1;
  });
  for (let i = 1; i <= count; i++) from[i] = (from[i] as number) + (from[i - 1] as number);
  const all = new Uint32Array(from[count] as number);
  const next = from.slice();
  each((list, value) => {
    const at = next[list] as number;
    all[at] = value;
    next[list] = at + 1;
  });
  return { from, all };
}

const known = new WeakMap<Model, Links>();

/** Worked out once for a model. */
export function links(model: Model): Links {
  const found = known.get(model);
  if (found !== undefined) return found;
  const kept = madeCodeOf(model)?.reads();
  const made = kept === undefined ? linksAmong(model, model.order) : linksOf(model, kept);
  known.set(model, made);
  return made;
}

/** What the formulas of a model read, as lists of numbers alone. */
export function readList(model: Model): ReadList {
  const { reads, stretches } = linksAmong(model, model.order);
  return {
    counts: reads.map(({ length }) => length),
    nodes: reads.flat(),
    stretches: stretches.flatMap(({ from, rows }) => [from, rows]),
  };
}

function linksOf(model: Model, { counts, nodes, stretches }: ReadList): Links {
  let end = 0;
  const reads = counts.map((count) => {
    end += count;
    return nodes.slice(end - count, end);
  });
  const places = Array.from({ length: stretches.length / 2 }, (_, i) => ({
    from: stretches[2 * i] as number,
    rows: stretches[2 * i + 1] as number,
  }));
  return { reads, stretches: places, within: withinOf(model.cells.length, places) };
}

/** The stretches in which each cell stands. */
const withinOf = (cells: number, stretches: readonly Stretch[]): Lists =>
  listsOf(cells, (put) => {
    stretches.forEach(({ from, rows }, i) => {
      for (let index = from; index < from + rows; index++) put(index, cells + i);
    });
  });

/** What a formula reads from a row: a cell, or a stretch. */
type Node = (row: number) => number;

/** What some formulas read, each from within its row. */
export function linksAmong(
  model: Model,
  formulas: readonly { readonly native?: Tree; readonly row?: number }[],
): Links {
  const cells = model.cells.length;
  const stretches: Stretch[] = [];
  const places = new Map<string, number>();
  const place = (from: number, rows: number): number => {
    const key = `${from} ${rows}`;
    const found = places.get(key) ?? cells + stretches.push({ from, rows }) - 1;
    places.set(key, found);
    return found;
  };
  const nodesOf = (reference: Reference): Node[] => {
    if (reference.kind === "own") {
      const { cells } = columnOf(model, reference.table, reference.column);
      const own = (row: number) => cells[row - reference.back - 1] ?? cellOf(model, reference, row);
      return [(row) => own(row).index];
    }
    const nodes =
      reference.kind === "column"
        ? stretchesOf(columnOf(model, reference.table, reference.column).cells)
        : reference.kind === "area"
          ? stretchesOf(areaCells(model, reference))
          : [cellOf(model, reference, 0).index];
    return nodes.map((node) => () => node);
  };
  const stretchesOf = (cells: readonly Cell[]) =>
    runsOf(cells).map(([from, rows]) => place(from, rows));
  // the rows of a column share a formula
  const known = new Map<Tree, Node[]>();
  const reads = formulas.map(({ native, row = 0 }) => {
    if (native === undefined) return [];
    const nodes = known.get(native) ?? referencesOf(native).flatMap(nodesOf);
    known.set(native, nodes);
    return nodes.map((node) => node(row));
  });
  return { reads, stretches, within: withinOf(cells, stretches) };
}

/** The runs of cells that follow one another: from, and how many. */
export function runsOf(
  cells: readonly { readonly index: number }[],
): readonly [from: number, rows: number][] {
  const runs: [from: number, rows: number][] = [];
  for (const { index } of cells) {
    const last = runs.at(-1);
    if (last !== undefined && last[0] + last[1] === index) last[1] += 1;
    else runs.push([index, 1]);
  }
  return runs;
}
