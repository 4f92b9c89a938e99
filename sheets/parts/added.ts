import type { CellDeclaration } from "../../engine/template/index.js";

/**
 * Figures of one part that others add to: the water that is out of the basin while it runs, the ground that is
 * stripped, … The part that has the figure need not know who adds to it.
 */
export const sums = [
  /** Conditions: what must be given before a bid shows a price. */
  "given",
  /** Water drawn off by lines at a stop, besides what is in them. */
  "siphoned",
  /** Head lost in the main, in ft for each (gal/min)² as a bare number. */
  "main loss",
  /** Loss coefficient K of what is fitted into a line, worked out in its row of `pipe_lines`. */
  "line fittings",
  /** Power that is drawn as long as the pump runs. */
  "running power",
  /** Current of the pump's circuit. */
  "circuit current",
  /** Water out of the basin while it runs, which comes back at a stop. */
  "water out",
  /** Water that is there while it runs, and neither in the basin nor out of it by the sum before. */
  "first fill",
  /** Open water from which it evaporates. */
  "wet area",
  /** Ground besides the basin from which rain runs into it. */
  "catchment",
  "stripped",
  /** Ground that lies under the work, and is no lawn again. */
  "covered",
  "dug",
  /** Topsoil over these digs, which is stripped before. */
  "topsoil",
  "refilled",
  /** Places of crates in a layer that something else takes. */
  "crate places",
  /** Plan area of the basin, from bottom to top, that is solid. */
  "solid",
  /** What was metered, counted once it is built. */
  "metered",
  /** Lengths that a basin must have for something else than its water. */
  "basin length",
  /** Conditions on which a basin is as large as something else than its water asks for. */
  "basin kept",
] as const;

export type Sum = (typeof sums)[number];

/** What a part adds, by the figure: a formula each. */
export type Adds = Readonly<Partial<Record<Sum, string | readonly string[]>>>;

/** What all parts add together, by the figure. */
export type Added = (sum: Sum) => readonly string[];

/** Spots in the blocks of a part where others put cells of their own. */
export const spots = [
  "stripped",
  "dug",
  "dig safety",
  "trench rules",
  "design rain",
  "price check",
  "figures said",
  "lifting",
  "lifting checks",
  "proposal said",
] as const;

export type Spot = (typeof spots)[number];

export type Cells = Readonly<Record<string, CellDeclaration>>;

/** Words of a trade in labels of the parts that it shares with others; as a waterfall says them. */
export const words = {
  "in stream": "in stream",
  "in the stream": "In the stream",
  "pools and pots": "pools and pots",
  pots: "pots",
  rim: "stream end above basin water",
  lines: "Lines and pots",
} as const;

export type Word = keyof typeof words;
export type Words = Readonly<Record<Word, string>>;

/** The formula of a sum, and what it is where nobody adds to it. */
export const sumOf = (added: readonly string[], none: string): string => (added.length === 0 ? none : added.join("+"));

/** What stands behind a formula that goes on with these. */
export const plus = (added: readonly string[]): string => added.map((one) => `+${one}`).join("");
export const minus = (added: readonly string[]): string => added.map((one) => `-${one}`).join("");
