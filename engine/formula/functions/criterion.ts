import { compare, type Plain } from "../arithmetic/operators.js";

type Test = (value: Plain) => boolean;

const holds: Readonly<Record<string, (order: number) => boolean>> = {
  "=": (order) => order === 0,
  "<>": (order) => order !== 0,
  "<": (order) => order < 0,
  "<=": (order) => order <= 0,
  ">": (order) => order > 0,
  ">=": (order) => order >= 0,
};

const operators = /^(<>|<=|>=|=|<|>)?([\s\S]*)$/;

/** What stands after the operator: a number or a truth value if it reads as one. */
function operand(text: string): Plain {
  const upper = text.toUpperCase();
  if (upper === "TRUE" || upper === "FALSE") return upper === "TRUE";
  return text.trim() !== "" && Number.isFinite(Number(text)) ? Number(text) : text;
}

/** A pattern for a whole text: `*` any run, `?` any one character, `~` takes the next literally. */
function wildcard(pattern: string): RegExp {
  const source = pattern.replace(/~([*?~])|[*?]|[\\^$.|+()[\]{}]/g, (found, literal) => {
    if (found === "*") return "[\\s\\S]*";
    if (found === "?") return "[\\s\\S]";
    return `\\${literal ?? found}`;
  });
  return new RegExp(`^${source}$`, "iu");
}

/**
 * The test that a criterion of COUNTIF and its kin stands for: a value to equal, or a text
 * that begins with a comparison, such as ">0". A blank criterion looks for 0. Numbers, texts
 * and booleans match only their own kind; "<>" counts what is not blank, "=" what is.
 */
export function criterion(wanted: Plain): Test {
  if (typeof wanted !== "string") {
    const same = wanted ?? 0;
    return (value) => value === same;
  }
  const [, operator = "", rest = ""] = operators.exec(wanted) ?? [];
  if (rest === "" && operator === "") return (value) => value === null || value === "";
  if (rest === "" && operator === "=") return (value) => value === null;
  if (rest === "" && operator === "<>") return (value) => value !== null;
  const than = operand(rest);
  if (typeof than === "string" && (operator === "" || operator === "=" || operator === "<>")) {
    const pattern = wildcard(than);
    const negated = operator === "<>";
    return (value) => (typeof value === "string" && pattern.test(value)) !== negated;
  }
  if (operator === "<>") return (value) => value !== than;
  const accepts = holds[operator === "" ? "=" : operator] as (order: number) => boolean;
  return (value) => typeof value === typeof than && accepts(compare(value, than));
}
