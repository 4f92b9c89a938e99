import { type Narrowed, readersFrom } from "../evaluate/narrowed.js";
import { Ripple } from "../evaluate/ripple.js";
import { CellError, type ErrorCode, type Value } from "../formula/value.js";
import type { Range } from "../job/record.js";
import { type LearnedOverrun, overrunAt } from "./overrun.js";
import { RandomStreams } from "./random.js";
import { triangular } from "./triangular.js";

/** Draws that take their random numbers from one stream; a stream begins with each block. */
export const blockSize = 500;

/** All that draws need. Plain data: it goes to worker threads. */
export interface DrawTask {
  readonly narrowed: Narrowed;
  readonly values: readonly SentValue[];
  /** The cells of the cost, of the contingency within it, and of the money that goes with the work, by index. */
  readonly cost: number;
  readonly contingency?: number;
  readonly moves?: number;
  readonly inputs: readonly {
    readonly index: number;
    readonly range: Range;
    readonly whole: boolean;
  }[];
  readonly overrun?: Pick<LearnedOverrun, "half" | "fifth">;
  readonly draws: number;
  readonly seed: number;
}

/** A value on its way to a thread, where errors lose their class. */
type SentValue = Exclude<Value, CellError> | { readonly code: ErrorCode; readonly origin?: string };

export const sentValue = (value: Value): SentValue =>
  value instanceof CellError
    ? { code: value.code, ...(value.origin === undefined ? {} : { origin: value.origin }) }
    : value;

const takenValue = (value: SentValue): Value =>
  typeof value === "object" && value !== null ? new CellError(value.code, value.origin) : value;

export const blocksOf = ({ draws }: Pick<DrawTask, "draws">): number =>
  Math.ceil(draws / blockSize);

/** Draws block by block: what a block comes to hangs on its place alone. */
export class Drawer {
  readonly #kept: Ripple;
  readonly #streams: RandomStreams;

  constructor(private readonly task: DrawTask) {
    this.#kept = new Ripple(readersFrom(task.narrowed), task.values.map(takenValue), true);
    this.#streams = new RandomStreams(task.seed);
  }

  /** The cost without contingency of each draw of a block; what cannot be calculated is no number. */
  block(place: number): Float64Array {
    const random = this.#streams.of(place);
    const count = Math.min(blockSize, this.task.draws - place * blockSize);
    return Float64Array.from({ length: count }, () => this.#drawn(random));
  }

  #drawn(random: () => number): number {
    const { inputs, cost, contingency, moves, overrun } = this.task;
    const { values } = this.#kept;
    for (const { index, range, whole } of inputs) {
      const value = triangular(range, random());
      this.#kept.set(index, whole ? Math.round(value) : value);
    }
    // a draw takes as many random numbers as any other, whatever comes of it
    const over = overrun === undefined ? 0 : overrunAt(overrun, random());
    this.#kept.settle();
    const all = values[cost];
    const kept = contingency === undefined ? 0 : values[contingency];
    const moved = moves === undefined ? 0 : values[moves];
    if (typeof all !== "number" || typeof kept !== "number" || typeof moved !== "number") {
      return Number.NaN;
    }
    return all - kept + moved * over;
  }
}
