import { RillbookError } from "../errors.js";
import { describeDimension, sameDimension } from "./dimension.js";
import { unitWritten } from "./spelling.js";
import type { Unit } from "./unit.js";

const plainNumber = String.raw`(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d*)?(?:e[-+]?\d+)?|\.\d+(?:e[-+]?\d+)?`;
const fraction = String.raw`\d+\/[1-9]\d*`;
const amount = String.raw`(?:\d+(?:-| +)${fraction}|${fraction}|${plainNumber})`;
const feet = String.raw`(?:'|ft\.?|foot|feet)`;
const inches = String.raw`(?:"|in\.?|inch|inches)`;

const single = new RegExp(String.raw`^([-+]?)(\$?)\s*(${amount})\s*([^\d\s.,+-].*)?$`, "i");
const feetAndInches = new RegExp(
  String.raw`^([-+]?)(${amount})\s*${feet}\s*[-, ]?\s*(${amount})\s*(${inches})?$`,
  "i",
);

/** A number as somebody wrote it, and the unit beside it. */
interface Written {
  readonly value: number;
  /** As written; empty where there is none. */
  readonly unit: string;
}

/**
 * A measure that somebody wrote, in the unit of a cell: `24 in`, `2'6"`, `2-1/2 in`, `1.2 m`. A
 * number without a unit is in the cell's own. Returns undefined for what is no number at all.
 * Throws RillbookError for a unit that is not known or that measures something else, and for what can be read in two ways.
 * @param own the unit of the cell
 */
export function measureIn(own: Unit, text: string): number | undefined {
  const tidy = tidied(text);
  // ft2 is an area
  const both = /t[23]$/i.test(tidy) ? null : feetAndInches.exec(tidy);
  if (both !== null) return inFeetAndInches(own, text, both);
  const written = numberAndUnit(tidy);
  if (written === undefined || !Number.isFinite(written.value)) return undefined;
  if (written.unit === "") return written.value;
  return converted(own, text, written);
}

function numberAndUnit(text: string): Written | undefined {
  const [, sign = "", money = "", digits = "", rest = ""] = single.exec(text) ?? [];
  if (digits === "" || (rest.startsWith("/") && money === "")) return undefined;
  return { value: (sign === "-" ? -1 : 1) * numberOf(digits), unit: money + rest.trim() };
}

function inFeetAndInches(own: Unit, text: string, parts: RegExpExecArray): number {
  const [, sign, whole = "", part = "", inch] = parts;
  if (inch === undefined) {
    throw unclear(text, `its last number has no unit. Write ${text.trim()} in, or another unit`);
  }
  if (numberOf(part) >= 12) {
    throw unclear(text, "12 inches and more are a foot. Write feet and less than 12 inches");
  }
  const value = (sign === "-" ? -1 : 1) * (numberOf(whole) + numberOf(part) / 12);
  return converted(own, text, { value, unit: "ft" });
}

function converted(own: Unit, text: string, { value, unit: written }: Written): number {
  // the metric ton by its sign, where short tons are meant, is a tenth too much
  if (written.toLowerCase() === "t" && own.name !== "t" && own.dimension.mass === 1) {
    throw unclear(text, "t is the sign of the metric ton. Write tons, or tonnes");
  }
  const unit = unitWritten(written);
  if (unit === undefined) {
    throw new RillbookError(
      "unit-unknown",
      `${JSON.stringify(text)}: the unit "${written}" is not known. Write the number in ${named(own)}, or another unit of that kind.`,
    );
  }
  if (!sameDimension(unit.dimension, own.dimension) || (own.name === "" && unit.name !== "")) {
    throw new RillbookError(
      "unit-wrong",
      `${JSON.stringify(text)} is in ${unit.name} (${describeDimension(unit.dimension)}), but ${named(own)} is wanted (${describeDimension(own.dimension)}). Write it in ${named(own)}.`,
    );
  }
  // in one step, and to the digits that both sizes have
  return Number(((value * unit.size) / own.size).toPrecision(15));
}

/** For sentences: the unit, or that there is none. */
const named = ({ name }: Unit): string => (name === "" ? "a plain number, without a unit" : name);

const unclear = (text: string, why: string): RillbookError =>
  new RillbookError("measure-unclear", `${JSON.stringify(text)} can be read in two ways: ${why}.`);

/** `2-1/2`, `1/2`, `1,250.5`. */
function numberOf(digits: string): number {
  const [, whole = "0", above, below] = /^(?:(\d+)(?:-| +))?(\d+)\/(\d+)$/.exec(digits) ?? [];
  if (above !== undefined) return Number(whole) + Number(above) / Number(below);
  return Number(digits.replaceAll(",", ""));
}

/** Signs that word processors and phones put in place of the plain ones. */
function tidied(text: string): string {
  return text
    .replaceAll(/[¼½¾⅐-⅞]/g, (sign) => ` ${sign.normalize("NFKC")}`)
    .replaceAll("\u2044", "/")
    .replaceAll(/[′’‘]/g, "'")
    .replaceAll(/[″”“]|''/g, '"')
    .replaceAll(/[−‐‑–]/g, "-")
    .trim()
    .replaceAll(/\s+/g, " ");
}
