/** The four words of a generator's state. */
type State = [number, number, number, number];

/** The jump of xoshiro128 over 2^64 numbers, as its authors give it (from memory; the tests work it out anew). */
const jump = [0x8764000b, 0xf542d2d3, 0x6fa035c3, 0x77f2db5b];

/**
 * Random numbers that are the same for the same seed, on every machine, in streams that do not meet: each begins 2^64 numbers
 * behind the one before it. So the numbers of a block of draws hang on its place alone, and not on who draws it when.
 * xoshiro128** seeded through splitmix32 (Blackman and Vigna 2018, "Scrambled linear
 * pseudorandom number generators"; seeding from memory).
 */
export class RandomStreams {
  readonly #first: State;
  /** Where the stream that was asked for last begins: the next one is not far. */
  #last: { readonly stream: number; readonly state: State };

  constructor(seed: number) {
    this.#first = seeded(seed);
    this.#last = { stream: 0, state: this.#first };
  }

  /** Random numbers from 0 up to 1 of a stream, from 0. */
  of(stream: number): () => number {
    let { stream: at, state } =
      this.#last.stream <= stream ? this.#last : { stream: 0, state: this.#first };
    for (; at < stream; at++) state = jumped(state);
    this.#last = { stream, state };
    const own: State = [...state];
    // 53 bits, as many as a double holds
    return () => ((bits(own) >>> 5) * 67108864 + (bits(own) >>> 6)) / 9007199254740992;
  }
}

/** Random numbers of the first stream. */
export const randomFrom = (seed: number): (() => number) => new RandomStreams(seed).of(0);

function seeded(seed: number): State {
  let mixed = seed | 0;
  const next = (): number => {
    mixed = (mixed + 0x9e3779b9) | 0;
    let z = mixed;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return (z ^ (z >>> 15)) >>> 0;
  };
  return [next(), next(), next(), next()];
}

const turned = (x: number, by: number) => (x << by) | (x >>> (32 - by));

/** The next 32 bits; the state goes one step on. */
function bits(state: State): number {
  const result = Math.imul(turned(Math.imul(state[1], 5), 7), 9) >>> 0;
  const shifted = state[1] << 9;
  state[2] ^= state[0];
  state[3] ^= state[1];
  state[1] ^= state[2];
  state[0] ^= state[3];
  state[2] ^= shifted;
  state[3] = turned(state[3], 11);
  return result;
}

/** The state 2^64 numbers further on. */
export function jumped(from: Readonly<State>): State {
  const state: State = [...from];
  const sum: State = [0, 0, 0, 0];
  for (const word of jump) {
    for (let bit = 0; bit < 32; bit++) {
      if ((word & (1 << bit)) !== 0)
        for (let i = 0; i < 4; i++) sum[i] = (sum[i] ?? 0) ^ (state[i] ?? 0);
      bits(state);
    }
  }
  return sum;
}
