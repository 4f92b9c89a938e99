import type { Model } from "../template/model.js";
import type { Finding } from "./finding.js";
import type { FindingCode } from "./finding-codes.js";
import { moneyOf } from "./moved-price.js";

const figures: ReadonlySet<FindingCode> = new Set([
  ...["formula-overwritten", "formula-edited", "formula-missing", "input-formula"],
  ...["published-changed", "number-format", "value-stale", "hidden", "look"],
] as FindingCode[]);

/** What a finding of each code weighs where it touches no page that leaves the office; the less, the earlier. */
const weights: Partial<Record<FindingCode, number>> = {
  "input-kind": 0,
  // every formula with such a name reads the wrong cell
  "name-moved": 0,
  // what is to be mended before results that do not follow are recalculated
  "price-changed": 1,
  seal: 2,
  "sheet-missing": 3,
  "row-missing": 4,
  "row-inserted": 4,
  "check-failed": 5,
  "name-missing": 6,
  trail: 6,
};
const [ofPages, ofFigures, ofTrifles] = [1, 2, 7];

/**
 * The wrong findings with what costs money or harms people first: inputs that cannot be read, on which all else rests, then
 * changed figures and hidden lines of the pages that leave the office and of the price, then figures of other sheets,
 * what is gone, and what is only of the workbook's making. Those of one weight stay in the order of the checks.
 */
export function byWeight(model: Model, findings: readonly Finding[]): Finding[] {
  const money = moneyOf(model);
  const ids = new Set(money.map(({ id }) => id));
  const pages = new Set(model.sheets.filter(({ handout }) => handout).map(({ name }) => name));
  for (const { sheet } of money) pages.add(sheet);
  const asking = new Set(
    model.cells.filter(({ declaration }) => declaration.kind === "input").map((one) => one.sheet),
  );
  const weightOf = ({ grade, code, where, name, names = [] }: Finding): number => {
    if (grade !== "wrong") return 0;
    // without its inputs all else is another bid
    if (code === "sheet-missing" && asking.has(where.replace(/^sheet /, ""))) return 0;
    if (!figures.has(code)) return weights[code] ?? ofTrifles;
    const sheet = where.replace(/^sheet /, "").replace(/!.*$/, "");
    if (pages.has(sheet) || [name, ...names].some((one) => ids.has(one ?? ""))) return ofPages;
    return code === "value-stale" ? ofTrifles : ofFigures;
  };
  return [...findings].sort((a, b) => weightOf(a) - weightOf(b));
}
