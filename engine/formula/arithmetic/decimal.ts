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

/**
 * The same by plain arithmetic, where binary error cannot tip it: the scaled size is whole, or
 * far from whole and from half. Then the quotient of two exact numbers is the nearest double.
 */
function plainly(
  whole: (size: number) => number,
  value: number,
  scale: number,
): number | undefined {
  const size = Math.abs(value) * scale;
  if (!(size < 1e8)) return undefined;
  const part = size - Math.floor(size);
  const far = (from: number) => Math.abs(part - from) > 1e-6;
  if (part !== 0 && !(far(0) && far(0.5) && far(1))) return undefined;
  return (Math.sign(value) * (part === 0 ? size : whole(size))) / scale;
}

/** Rounds at `places` decimals (negative: tens, hundreds …) with `whole`, which rounds a number >= 0. */
export function roundedBy(whole: (size: number) => number, value: number, places: number): number {
  const decimals = Math.trunc(places);
  const plain = decimals >= 0 && decimals <= 6 ? plainly(whole, value, 10 ** decimals) : undefined;
  if (plain !== undefined) return plain;
  const size = shift(Math.abs(value), decimals);
  if (size >= wholeFrom) return value;
  return Math.sign(value) * shift(whole(size), -decimals);
}

/** Rounds at `places` decimals, halves away from zero, after taking the number to 15 digits. */
export function rounded(value: number, places: number): number {
  return roundedBy((size) => Math.floor(size + 0.5), value, places);
}

/** The largest whole number not above the value taken to 15 digits. */
export function floorOf(value: number): number {
  return Math.abs(value) >= wholeFrom ? value : Math.floor(significant(value));
}

/** The number in plain decimal digits, 15 of them significant, with at least `decimals` decimals. */
export function decimalText(value: number, decimals = 0): string {
  const [mantissa, power] = Math.abs(value).toExponential(14).split("e") as [string, string];
  const point = Number(power) + 1;
  const digits = mantissa.replace(".", "").padStart(15 - Math.min(point, 0), "0");
  const whole = point > 0 ? digits.slice(0, point).padEnd(point, "0") : "0";
  const part = digits.slice(Math.max(point, 0)).replace(/0+$/, "").padEnd(decimals, "0");
  return `${value < 0 ? "-" : ""}${whole}${part === "" ? "" : `.${part}`}`;
}
