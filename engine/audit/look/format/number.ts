import { rounded } from "../../../formula/arithmetic/decimal.js";
import { literalOf, literalsIn } from "./pieces.js";

/** Decimals beyond these nobody reads. */
const mostDecimals = 20;

const isPlace = (piece: string | undefined): boolean =>
  piece !== undefined && /^[0#?]$/.test(piece);

/** The pieces of a part for numbers by what they do. */
interface Places {
  /** Where the point stands; behind all pieces where there is none. */
  readonly point: number;
  readonly first: number;
  /** The last place before the point. */
  readonly last: number;
  readonly wholes: readonly string[];
  readonly decimals: number;
  /** Commas that part thousands. */
  readonly groups: boolean;
  /** Commas that leave thousands out. */
  readonly scales: number;
}

function placesIn(pieces: readonly string[]): Places {
  const first = pieces.findIndex(isPlace);
  const found = first < 0 ? -1 : pieces.indexOf(".");
  const point = found < 0 ? pieces.length : found;
  const last = pieces.slice(0, point).findLastIndex(isPlace);
  let [groups, scales, wasPlace] = [false, 0, false];
  for (const [i, piece] of pieces.entries()) {
    if (piece !== ",") wasPlace = isPlace(piece) || i === point;
    else if (first >= 0 && i > first && i < last) groups = true;
    else if (wasPlace) scales += 1;
  }
  const wholes = pieces.slice(0, point).filter(isPlace);
  const decimals = pieces.slice(point).filter(isPlace).length;
  return { point, first, last, wholes, decimals: Math.min(decimals, mostDecimals), groups, scales };
}

/** A number without its sign as the pieces of a part show it, digit by digit. */
export function numberSaid(pieces: readonly string[], size: number): string {
  const { point, first, wholes, decimals, groups, scales } = placesIn(pieces);
  const shares = pieces.filter((piece) => piece === "%").length;
  const scaled = (size * 100 ** shares) / 1000 ** scales;
  const power = pieces.find((piece) => piece.startsWith("e\\"));
  const exponent = power === undefined || scaled === 0 ? 0 : Math.floor(Math.log10(scaled));
  const figure = rounded(scaled / 10 ** exponent, decimals).toFixed(decimals);
  const [whole = "0", rest = ""] = figure.split(".");
  const least = wholes.includes("0") ? wholes.length - wholes.indexOf("0") : 0;
  const digits = (whole === "0" ? "" : whole).padStart(least, "0");
  const needed = rest.replace(/0+$/, "").length;
  const taken = (from: number, to: number) =>
    [...digits.slice(Math.max(0, from), Math.max(0, to))]
      .map((digit, i) => {
        const right = digits.length - Math.max(0, from) - i - 1;
        return groups && right > 0 && right % 3 === 0 ? `${digit},` : digit;
      })
      .join("");
  let [wholeAt, restAt] = [0, 0];
  return pieces
    .map((piece, i) => {
      const literal = literalOf(piece);
      if (literal !== undefined) return literal;
      if (piece === "general" || piece === "@") return String(Number(size.toPrecision(10)));
      if (piece === power) return `E${exponent < 0 ? "-" : "+"}${Math.abs(exponent)}`;
      if (i === point) return wholes.length === 0 ? `${taken(0, digits.length)}.` : ".";
      if (isPlace(piece) && i < point) {
        wholeAt += 1;
        const to = digits.length - wholes.length + wholeAt;
        return taken(wholeAt === 1 ? 0 : to - 1, to);
      }
      if (isPlace(piece)) {
        restAt += 1;
        return piece === "0" || restAt <= needed ? (rest[restAt - 1] ?? "") : "";
      }
      if (piece === ",") return first < 0 || i < first ? "," : "";
      return piece[0] === "[" ? "" : piece;
    })
    .join("");
}

/** A part that shows a fraction: what stands before it, its places, and what stands after it. */
export interface Fraction {
  readonly before: string;
  readonly after: string;
  readonly hasWhole: boolean;
  /** Places for what stands below the line, or the figure that is fixed there. */
  readonly below: string;
}

/** The fraction that a part shows; undefined where it shows none. */
export function fractionIn(part: string): Fraction | undefined {
  const found = /^(.*?)(?:([0#?,]+)(?:\\ )+)?[0#?]+\\\/([0#?]+|[1-9]\d*)(.*)$/s.exec(part);
  if (found === null) return undefined;
  const [, before = "", whole, below = "", after = ""] = found;
  return { before, after, hasWhole: whole !== undefined, below };
}

/** A number without its sign as a fraction, the nearest that there is room for. */
export function fractionSaid({ before, after, hasWhole, below }: Fraction, size: number): string {
  const whole = hasWhole ? Math.floor(size) : 0;
  const rest = size - whole;
  const fixed = /^\d+$/.test(below) && Number(below) > 0 ? Number(below) : undefined;
  const most = fixed ?? 10 ** Math.min(below.length, 3) - 1;
  let [over, under] = [Math.round(rest * most), most];
  for (let one = fixed ?? 1; one <= most; one++) {
    const near = Math.round(rest * one);
    if (Math.abs(near / one - rest) < Math.abs(over / under - rest) - 1e-12)
      [over, under] = [near, one];
  }
  const part = over === 0 ? "" : over === under && hasWhole ? "" : `${over}/${under}`;
  const upper = over === under && hasWhole ? whole + 1 : whole;
  const figure = [upper === 0 && part !== "" ? "" : String(upper), part].filter(Boolean).join(" ");
  return literalsIn(before) + figure + literalsIn(after);
}
