/**
 * Random numbers from 0 up to 1 that are the same for the same seed, on every machine:
 * xoshiro128** seeded through splitmix32 (Blackman and Vigna 2018, "Scrambled linear
 * pseudorandom number generators"; seeding from memory).
 */
export function randomFrom(seed: number): () => number {
  let mixed = seed | 0;
  const next = (): number => {
    mixed = (mixed + 0x9e3779b9) | 0;
    let z = mixed;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return (z ^ (z >>> 15)) >>> 0;
  };
  let [a, b, c, d] = [next(), next(), next(), next()];
  const turned = (x: number, by: number) => (x << by) | (x >>> (32 - by));
  const bits = (): number => {
    const result = Math.imul(turned(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = turned(d, 11);
    return result;
  };
  // 53 bits, as many as a double holds
  return () => ((bits() >>> 5) * 67108864 + (bits() >>> 6)) / 9007199254740992;
}
