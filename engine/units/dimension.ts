/** The independent kinds of measure that the compiler keeps apart. Counts, shares and people have none of them. */
export const baseDimensions = [
  "length",
  "mass",
  "time",
  "temperature",
  "current",
  "money",
  "angle",
] as const;

export type BaseDimension = (typeof baseDimensions)[number];

/** Exponents of the base dimensions; an absent one is zero. Area is `{ length: 2 }`. */
export type Dimension = Readonly<Partial<Record<BaseDimension, number>>>;

export const dimensionless: Dimension = Object.freeze({});

function combine(a: Dimension, b: Dimension, sign: 1 | -1): Dimension {
  const result: Partial<Record<BaseDimension, number>> = {};
  for (const base of baseDimensions) {
    const exponent = (a[base] ?? 0) + sign * (b[base] ?? 0);
    if (Math.abs(exponent) > 1e-9) result[base] = exponent;
  }
  return Object.freeze(result);
}

export const multiplyDimensions = (a: Dimension, b: Dimension): Dimension => combine(a, b, 1);

export const divideDimensions = (a: Dimension, b: Dimension): Dimension => combine(a, b, -1);

/** The dimension of a value raised to a power, which may be a fraction: the root of an area is a length. */
export function raiseDimension(a: Dimension, power: number): Dimension {
  const result: Partial<Record<BaseDimension, number>> = {};
  for (const base of baseDimensions) {
    const exponent = (a[base] ?? 0) * power;
    if (Math.abs(exponent) > 1e-9) result[base] = exponent;
  }
  return Object.freeze(result);
}

/** Whether two dimensions have the same exponents, thirds and other fractions to 1e-9. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  return baseDimensions.every((base) => Math.abs((a[base] ?? 0) - (b[base] ?? 0)) < 1e-9);
}

/** For messages: `length²/time`, or `a plain number`. */
export function describeDimension(dimension: Dimension): string {
  const up: string[] = [];
  const down: string[] = [];
  for (const base of baseDimensions) {
    const exponent = dimension[base] ?? 0;
    const size = Math.abs(exponent);
    if (exponent !== 0) (exponent > 0 ? up : down).push(size === 1 ? base : `${base}^${size}`);
  }
  if (up.length + down.length === 0) return "a plain number";
  const above = up.length === 0 ? "1" : up.join("·");
  return down.length === 0 ? above : `${above}/${down.join("/")}`;
}
