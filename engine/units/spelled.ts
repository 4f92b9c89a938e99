/** Who reads a text: people in the office, or those to whom a page is handed. */
export type Reader = "office" | "customer" | "crew" | "supplier";

/** A unit beside a one, and beside any other figure. */
export interface SpelledUnit {
  readonly one: string;
  readonly many: string;
}

const both = (one: string, many = `${one}s`): SpelledUnit => ({ one, many });

/** Units that are words: everybody reads them so. */
const words: Readonly<Record<string, SpelledUnit>> = {
  days: both("day"),
  months: both("month"),
  ton: both("ton"),
};

/** Signs that a customer reads as words. */
const forCustomers: Readonly<Record<string, SpelledUnit>> = {
  "ft²": both("square foot", "square feet"),
  "m²": both("square meter"),
  "ft³": both("cubic foot", "cubic feet"),
  "yd³": both("cubic yard"),
  "m³": both("cubic meter"),
  gal: both("gallon"),
  L: both("liter"),
  "gal/min": both("gallon a minute", "gallons a minute"),
  "L/min": both("liter a minute", "liters a minute"),
  "gal/h": both("gallon an hour", "gallons an hour"),
  "L/h": both("liter an hour", "liters an hour"),
  A: both("ampere"),
  V: both("volt"),
  h: both("hour"),
  "h/day": both("hour a day", "hours a day"),
  t: both("metric ton"),
};

/** How a unit is written for a reader: its sign, where nobody needs another word. */
export function spelledUnit(unit: string, reader: Reader): SpelledUnit {
  const known = own(words, unit) ?? (reader === "customer" ? own(forCustomers, unit) : undefined);
  return known ?? both(unit, unit);
}

const own = <T>(table: Readonly<Record<string, T>>, key: string): T | undefined =>
  Object.hasOwn(table, key) ? table[key] : undefined;
