import type { Quantity, UnitSystem } from "../units/quantity.js";
import { unitOf } from "../units/quantity.js";

/** A figure named in a sentence: its quantity and decimals. */
export interface Figure {
  readonly quantity: Quantity;
  readonly decimals?: number;
}

/**
 * Turns a sentence with `{name}`, `{falls.width[2]}`, `{name|decimals}` or
 * `{name|decimals|bare}` (no unit) into a formula that joins text and figures, in the units of the system.
 *
 * @param figure looks a name up; throws or returns undefined for an unknown one
 */
export function sentenceFormula(
  sentence: string,
  system: UnitSystem,
  figure: (name: string) => Figure | undefined,
): string {
  const parts: string[] = [];
  for (const piece of sentence.split(/(\{[^}]*\})/)) {
    if (piece === "") continue;
    if (!piece.startsWith("{")) {
      parts.push(textLiteral(piece));
      continue;
    }
    const [name = "", decimals, bare] = piece.slice(1, -1).split("|");
    const { column, expression } = placeholder(name);
    const found = figure(column);
    if (found === undefined) parts.push(expression);
    else {
      const asked = decimals === undefined || decimals === "" ? undefined : Number(decimals);
      parts.push(spoken(expression, found, system, asked, bare === "bare"));
    }
  }
  return parts.length === 0 ? '""' : parts.join("&");
}

/** `falls.width[2]` is the second row of a column. */
function placeholder(name: string): { column: string; expression: string } {
  const match = /^([a-z_0-9]+\.[a-z_0-9]+)\[(\d+)\]$/.exec(name);
  if (match === null) return { column: name, expression: name };
  const [, column = "", row] = match;
  return { column, expression: `INDEX(${column},${row})` };
}

export const textLiteral = (text: string): string => `"${text.replaceAll('"', '""')}"`;

function spoken(
  name: string,
  { quantity, decimals }: Figure,
  system: UnitSystem,
  asked: number | undefined,
  bare: boolean,
): string {
  if (quantity.kind === "text") return name;
  if (quantity.kind === "yesno") return `IF(${name},"yes","no")`;
  if (quantity.kind === "date") return isoDate(name);
  const shown = asked ?? decimals ?? quantity.decimals[system];
  if (quantity.percent) return `FIXED(${name}*100,${shown})&"%"`;
  const figure = `FIXED(${name},${shown})`;
  const unit = unitOf(quantity, system).name;
  if (bare || unit === "") return figure;
  if (unit === "$") return `"$"&${figure}`;
  if (unit.startsWith("$/")) return `"$"&${figure}&${textLiteral(` a ${unit.slice(2)}`)}`;
  return `${figure}&${textLiteral(unit === "°" ? unit : ` ${unit}`)}`;
}

/** Year-month-day, built from parts: the formats of TEXT() change with the user's language. */
function isoDate(name: string): string {
  const two = (value: string) => `RIGHT("0"&FIXED(${value},0),2)`;
  const year = `FIXED(INT(YEAR(${name})/100),0)&${two(`MOD(YEAR(${name}),100)`)}`;
  return `${year}&"-"&${two(`MONTH(${name})`)}&"-"&${two(`DAY(${name})`)}`;
}
