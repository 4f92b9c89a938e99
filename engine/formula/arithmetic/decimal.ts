/** From here up every double is whole, and 15 significant digits leave no decimals. */
const wholeFrom = 1e15;

/** The number taken to 15 significant digits, which is what a spreadsheet shows and rounds. */
export function significant(value: number): number {
  return Number(value.toPrecision(15));
}

/** `value`, at 15 significant digits, times 10 to the power `places`, without binary error on the way. */
export function shift(value: number, places: number): number {
  const [digits, exponent] = value.toExponential(14).split("e") as [string, string];
  return Number(`${digits}e${Number(exponent) + places}`);
}

/** A way to round a size to a whole number, and the parts of one at which binary error could tip it. */
interface Way {
  readonly whole: (size: number) => number;
  readonly tips: readonly number[];
}

const toNearest: Way = { whole: (size) => Math.floor(size + 0.5), tips: [0.5] };
const upward: Way = { whole: Math.ceil, tips: [0, 1] };
const downward: Way = { whole: Math.floor, tips: [0, 1] };

const scales = [1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];

/**
 * The same by plain arithmetic, where binary error cannot tip it: the scaled size is whole, or
 * far from where it tips. Then the quotient of two exact numbers is the nearest double.
 */
function plainly({ whole, tips }: Way, value: number, scale: number): number | undefined {
  const size = Math.abs(value) * scale;
  if (!(size < 1e12)) return undefined;
  const part = size - Math.floor(size);
  if (part === 0) return (Math.sign(value) * size) / scale;
  // the 15th digit, and binary error with it, is less than a ten-trillionth of the size
  const near = Math.max(1e-6, size * 1e-13);
  for (const tip of tips) if (Math.abs(part - tip) <= near) return undefined;
  return (Math.sign(value) * whole(size)) / scale;
}

function roundedBy(way: Way, value: number, places: number): number {
  const decimals = Math.trunc(places);
  const scale = scales[decimals];
  const plain = scale === undefined ? undefined : plainly(way, value, scale);
  if (plain !== undefined) return plain;
  const size = shift(Math.abs(value), decimals);
  if (size >= wholeFrom) return value;
  return Math.sign(value) * shift(way.whole(size), -decimals);
}

/** Rounds at `places` decimals (negative: tens, hundreds …), halves away from zero, after taking the number to 15 digits. */
export const rounded = (value: number, places: number): number =>
  roundedBy(toNearest, value, places);

/** The same away from zero. */
export const roundedUp = (value: number, places: number): number =>
  roundedBy(upward, value, places);

/** The same toward zero. */
export const roundedDown = (value: number, places: number): number =>
  roundedBy(downward, value, places);

/** The largest whole number not above the value taken to 15 digits. */
export function floorOf(value: number): number {
  const below = Math.floor(value);
  const part = value - below;
  if (part === 0) return below;
  // far from whole numbers, 15 digits change nothing
  if (part > 1e-6 && part < 1 - 1e-6 && Math.abs(value) < 1e8) return below;
  return Math.abs(value) >= wholeFrom ? value : Math.floor(significant(value));
}

/** The number in plain decimal digits, 15 of them significant, with at least `decimals` decimals. */
export function decimalText(value: number, decimals = 0): string {
  if (decimals === 0 && Number.isInteger(value) && Math.abs(value) < wholeFrom) return `${value}`;
  const [mantissa, power] = Math.abs(value).toExponential(14).split("e") as [string, string];
  const point = Number(power) + 1;
  const digits = mantissa.replace(".", "").padStart(15 - Math.min(point, 0), "0");
  const whole = point > 0 ? digits.slice(0, point).padEnd(point, "0") : "0";
  const part = digits.slice(Math.max(point, 0)).replace(/0+$/, "").padEnd(decimals, "0");
  return `${value < 0 ? "-" : ""}${whole}${part === "" ? "" : `.${part}`}`;
}
