import { type Unit, unitNamed, unitNames } from "./unit.js";

/** How people write units, by the name in the table of units. */
const spellings: Readonly<Record<string, readonly string[]>> = {
  ft: ["foot", "feet", "'"],
  in: ["inch", "inches", '"'],
  yd: ["yds", "yard", "yards"],
  m: ["meter", "meters", "metre", "metres"],
  cm: ["centimeter", "centimeters", "centimetre", "centimetres"],
  mm: ["millimeter", "millimeters", "millimetre", "millimetres"],
  "ft²": ["sq ft", "sqft", "sf", "square foot", "square feet"],
  "m²": ["sq m", "sqm", "square meter", "square meters"],
  "ft³": ["cu ft", "cuft", "cf", "cubic foot", "cubic feet"],
  "yd³": ["cu yd", "cuyd", "cy", "cubic yard", "cubic yards"],
  "m³": ["cu m", "cubic meter", "cubic meters"],
  gal: ["gals", "gallon", "gallons"],
  L: ["liter", "liters", "litre", "litres"],
  "gal/min": ["gpm"],
  "gal/h": ["gph"],
  "L/min": ["lpm"],
  "L/h": ["lph"],
  "ft/s": ["fps"],
  lb: ["lbs", "pound", "pounds"],
  kg: ["kilogram", "kilograms"],
  ton: ["tons", "short ton", "short tons"],
  t: ["tonne", "tonnes", "metric ton", "metric tons"],
  "lb/ft³": ["pcf"],
  "lb/ft²": ["psf"],
  W: ["watt", "watts"],
  s: ["sec", "second", "seconds"],
  min: ["minute", "minutes"],
  h: ["hr", "hrs", "hour", "hours"],
  days: ["d", "day"],
  months: ["month"],
  "°": ["deg", "degree", "degrees"],
  $: ["dollar", "dollars", "usd"],
};

const named = new Map<string, string>();
for (const name of unitNames()) named.set(plain(name), name);
for (const [name, all] of Object.entries(spellings)) {
  for (const one of all) named.set(plain(one), name);
}

/** The unit that somebody wrote, in letters of either case: `in`, `"`, `sq. ft`, `gpm`, `gal/hr`, `m3`. */
export function unitWritten(text: string): Unit | undefined {
  const whole = named.get(plain(text));
  if (whole !== undefined) return unitNamed(whole);
  const parts = text.split(/\s*\/\s*|\s+per\s+/i).map((part) => named.get(plain(part)));
  if (parts.length < 2 || parts.length > 3 || parts.includes(undefined)) return undefined;
  const [above, below = "", width] = parts;
  const rate = `${above}/${below.replace(/^(day|month)s$/, "$1")}`;
  // a flow for a width: `gph per inch`, `gal/h per in`
  const tries = width === undefined ? [rate, `${above} per ${below}`] : [`${rate} per ${width}`];
  const found = tries.map((one) => named.get(plain(one))).find((one) => one !== undefined);
  return found === undefined ? undefined : unitNamed(found);
}

/** One spelling for one unit: small letters, raised figures, no dots, no blanks but single ones. */
function plain(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replaceAll(/\.|\^/g, "")
    .replaceAll(/\s+/g, " ")
    .replace(/(?<=^(?:ft|in|yd|m))2$/, "²")
    .replace(/(?<=^(?:ft|in|yd|m))3$/, "³");
}
