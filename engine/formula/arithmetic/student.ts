/** More degrees of freedom are refused: the beta function is multiplied up to them. */
export const mostFreedom = 1_000_000;

/** B(freedom / 2, 1 / 2), by its recurrence from B(1/2, 1/2) = pi and B(1, 1/2) = 2. */
function betaOf(freedom: number): number {
  const odd = freedom % 2 === 1;
  let beta = odd ? Math.PI : 2;
  for (let a = odd ? 0.5 : 1; a < freedom / 2; a += 1) beta *= a / (a + 0.5);
  return beta;
}

/**
 * The continued fraction of the incomplete beta function, by Lentz's way (Press et al., Numerical
 * Recipes, section 6.4, from memory).
 */
function fractionOf(a: number, b: number, x: number): number {
  const away = (value: number) => (Math.abs(value) < 1e-300 ? 1e-300 : value);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m <= 10_000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return fraction;
}

/**
 * The chance that Student's t of so many degrees of freedom lies outside -t to t, t >= 0: an incomplete
 * beta function (Abramowitz and Stegun, formula 26.7.1 and 26.5.27, from memory).
 */
function outside(t: number, freedom: number, beta: number): number {
  const [a, b] = [freedom / 2, 0.5];
  const square = (t * t) / freedom;
  const x = 1 / (1 + square);
  // x^a (1 - x)^b without the digits that x loses near 1
  const front = Math.exp(-a * Math.log1p(square)) * Math.sqrt(square * x);
  return x < (a + 1) / (a + b + 2)
    ? (front * fractionOf(a, b, x)) / (a * beta)
    : 1 - (front * fractionOf(b, a, square * x)) / (b * beta);
}

/**
 * The t that Student's distribution passes, to either side together, with probability `chance`, 0 < chance <= 1;
 * `freedom` is a whole number from 1 to `mostFreedom`. Newton's steps, kept between two bounds.
 */
export function studentInverse(chance: number, freedom: number): number {
  if (chance === 1) return 0;
  const beta = betaOf(freedom);
  let [low, high] = [0, 1];
  while (outside(high, freedom, beta) > chance) {
    low = high;
    high *= 2;
  }
  let t = (low + high) / 2;
  for (let i = 0; i < 200; i += 1) {
    const miss = outside(t, freedom, beta) - chance;
    if (miss > 0) low = t;
    else high = t;
    const slope =
      (-2 * Math.exp((-(freedom + 1) / 2) * Math.log1p((t * t) / freedom))) /
      (Math.sqrt(freedom) * beta);
    const next = t - miss / slope;
    const better = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(better - t) <= 1e-16 * t) return better;
    t = better;
  }
  return t;
}
