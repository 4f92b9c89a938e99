import type { UnitSystem } from "../units/quantity.js";
import type { AskingSheet, CellDeclaration, SheetDeclaration } from "./declare.js";

const either = /‹([^‹›|]*)\|([^‹›|]*)›/g;

/** The words for a system: of `a can for each ‹4 ft|1.2 m›` the first in US units, the second in SI. */
export function wordsIn(text: string, system: UnitSystem): string {
  return text.includes("‹")
    ? text.replace(either, (_, us: string, si: string) => (system === "us" ? us : si))
    : text;
}

/**
 * The sheets with all their declared texts in the words of a system: labels, notes, formulas,
 * sentences, choices, rows of data. What people give later is no declaration, and stays as it is.
 */
export function sheetsIn<Sheet extends SheetDeclaration | AskingSheet>(
  sheets: readonly Sheet[],
  system: UnitSystem,
): Sheet[] {
  return sheets.map((sheet) => worded(sheet, system));
}

function worded<T>(part: T, system: UnitSystem): T {
  if (typeof part === "string") return wordsIn(part, system) as T;
  if (typeof part === "function") {
    const text = part as unknown as (row: number) => string;
    return ((row: number) => wordsIn(text(row), system)) as T;
  }
  if (typeof part !== "object" || part === null) return part;
  if (Array.isArray(part)) return part.map((one) => worded(one, system)) as T;
  // quantities are shared by all templates
  if ("units" in part && "decimals" in part) return part;
  const entries = Object.entries(part).map(([key, value]) => [key, worded(value, system)]);
  return Object.freeze({ ...Object.fromEntries(entries), ...numberOf(part, system) }) as T;
}

/** A default that differs by system, such as a temperature, is a number again. */
function numberOf(part: object, system: UnitSystem): { default?: number } {
  const { kind, quantity, ...rest } = part as CellDeclaration;
  const given = "default" in rest ? rest.default : undefined;
  const differs = kind === "input" && quantity.kind === "number" && typeof given === "string";
  return differs && given.includes("‹") ? { default: Number(wordsIn(given, system)) } : {};
}
