export interface Random {
  between(low: number, high: number): number;
  whole(low: number, high: number): number;
  pick<T>(choices: T[]): T;
}

/** A small repeatable source of random numbers: a linear congruential step, its high bits mixed. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const mixed = Math.imul(state ^ (state >>> 15), 2246822519) >>> 0;
    return ((mixed ^ (mixed >>> 13)) >>> 0) / 2 ** 32;
  };
  const between = (low: number, high: number) => low + (high - low) * next();
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1));
  return {
    between,
    whole,
    pick: (choices) => choices[whole(0, choices.length - 1)] as (typeof choices)[number],
  };
}
