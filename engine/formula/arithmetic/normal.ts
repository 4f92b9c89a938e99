/** Further out the series loses digits; nearer the continued fraction converges slowly. */
const seriesBelow = 1;

/** The density of the standard normal distribution. */
function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** The area above z >= 0: a continued fraction (Abramowitz and Stegun, formula 26.2.14, from memory). */
function upperTail(z: number): number {
  let fraction = z;
  for (let i = 300; i >= 1; i -= 1) fraction = z + i / fraction;
  return normalDensity(z) / fraction;
}

/** The area below z; its series is Abramowitz and Stegun, formula 26.2.11 (from memory). */
function normalUpTo(z: number): number {
  if (z > seriesBelow) return 1 - upperTail(z);
  if (z < -seriesBelow) return upperTail(-z);
  let term = z;
  let sum = z;
  for (let i = 3; Math.abs(term) > 1e-18; i += 2) {
    term *= (z * z) / i;
    sum += term;
  }
  return 0.5 + normalDensity(z) * sum;
}

/**
 * The z with the area `probability` below it, 0 < probability < 1: a rational first guess
 * (Abramowitz and Stegun, formula 26.2.23, from memory), then Halley's steps.
 */
export function normalInverse(probability: number): number {
  if (probability === 0.5) return 0;
  const area = Math.min(probability, 1 - probability);
  const t = Math.sqrt(-2 * Math.log(area));
  const above = 2.515517 + t * (0.802853 + t * 0.010328);
  const below = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  let z = above / below - t;
  for (let i = 0; i < 4; i += 1) {
    const miss = (normalUpTo(z) - area) / normalDensity(z);
    z -= miss / (1 + (z * miss) / 2);
  }
  return probability < 0.5 ? z : -z;
}
