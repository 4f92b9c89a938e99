import type { Dimension } from "./dimension.js";

/**
 * A unit: its name as printed beside numbers, its dimension, and its size in SI
 * base units (metre, kilogram, second, kelvin, ampere, degree of angle, one unit of money).
 */
export interface Unit {
  readonly name: string;
  readonly dimension: Dimension;
  readonly size: number;
}

const units = new Map<string, Unit>();

function define(name: string, dimension: Dimension, size: number): void {
  units.set(name, Object.freeze({ name, dimension: Object.freeze(dimension), size }));
}

// Sizes: NIST Special Publication 811 (2008), Appendix B.8. Exact there unless it says otherwise.
const foot = 0.3048;
const inch = 0.0254;
const pound = 0.45359237;
const gallon = 231 * inch ** 3; // the US gallon is 231 cubic inches, exactly
const minute = 60;
const hour = 3600;
const day = 86400;
const month = (365.25 / 12) * day;
const standardGravity = 9.80665;

define("", {}, 1);
define("m", { length: 1 }, 1);
define("mm", { length: 1 }, 0.001);
define("cm", { length: 1 }, 0.01);
define("ft", { length: 1 }, foot);
define("in", { length: 1 }, inch);
define("yd", { length: 1 }, 3 * foot);
define("m²", { length: 2 }, 1);
define("ft²", { length: 2 }, foot ** 2);
define("mm²", { length: 2 }, 1e-6);
define("cmil", { length: 2 }, (Math.PI / 4) * (0.001 * inch) ** 2); // circle of a thousandth of an inch
define("m³", { length: 3 }, 1);
define("L", { length: 3 }, 0.001);
define("ft³", { length: 3 }, foot ** 3);
define("yd³", { length: 3 }, (3 * foot) ** 3);
define("gal", { length: 3 }, gallon);
define("gal/min", { length: 3, time: -1 }, gallon / minute);
define("gal/h", { length: 3, time: -1 }, gallon / hour);
define("ft³/s", { length: 3, time: -1 }, foot ** 3);
define("m³/s", { length: 3, time: -1 }, 1);
define("L/min", { length: 3, time: -1 }, 0.001 / minute);
define("L/h", { length: 3, time: -1 }, 0.001 / hour);
define("gal/h per in", { length: 2, time: -1 }, gallon / hour / inch);
define("L/h per mm", { length: 2, time: -1 }, 0.001 / hour / 0.001);
define("ft/s", { length: 1, time: -1 }, foot);
define("m/s", { length: 1, time: -1 }, 1);
define("in/day", { length: 1, time: -1 }, inch / day);
define("mm/day", { length: 1, time: -1 }, 0.001 / day);
define("in/h", { length: 1, time: -1 }, inch / hour);
define("mm/h", { length: 1, time: -1 }, 0.001 / hour);
define("ft/s²", { length: 1, time: -2 }, foot);
define("m/s²", { length: 1, time: -2 }, 1);
define("ft²/s", { length: 2, time: -1 }, foot ** 2);
define("10⁻⁵ ft²/s", { length: 2, time: -1 }, 1e-5 * foot ** 2);
define("mm²/s", { length: 2, time: -1 }, 1e-6);
define("m²/s", { length: 2, time: -1 }, 1);
define("lb", { mass: 1 }, pound);
define("kg", { mass: 1 }, 1);
define("ton", { mass: 1 }, 2000 * pound); // the short ton
define("t", { mass: 1 }, 1000);
define("lb/ft³", { mass: 1, length: -3 }, pound / foot ** 3);
define("kg/m³", { mass: 1, length: -3 }, 1);
define("lb/ft²", { mass: 1, length: -2 }, pound / foot ** 2);
define("kg/m²", { mass: 1, length: -2 }, 1);
define("ton/ft", { mass: 1, length: -1 }, (2000 * pound) / foot);
define("t/m", { mass: 1, length: -1 }, 1000);
define("lb/ft", { mass: 1, length: -1 }, pound / foot);
define("kg/m", { mass: 1, length: -1 }, 1);
define("inHg", { mass: 1, length: -1, time: -2 }, 3386.389); // SP 811, conventional inch of mercury
define("kPa", { mass: 1, length: -1, time: -2 }, 1000);
define("W", { mass: 1, length: 2, time: -3 }, 1);
define("A", { current: 1 }, 1);
define("V", { mass: 1, length: 2, time: -3, current: -1 }, 1);
define("kW", { mass: 1, length: 2, time: -3 }, 1000);
define("hp", { mass: 1, length: 2, time: -3 }, 550 * foot * pound * standardGravity);
define("Btu/lb", { length: 2, time: -2 }, 2326); // the international table Btu, exactly
define("kJ/kg", { length: 2, time: -2 }, 1000);
define("kWh", { mass: 1, length: 2, time: -2 }, 3.6e6);
define("s", { time: 1 }, 1);
define("min", { time: 1 }, minute);
define("h", { time: 1 }, hour);
define("days", { time: 1 }, day);
define("months", { time: 1 }, month);
define("h/day", {}, 1 / 24);
define("days/month", {}, day / month);
define("date", { time: 1 }, day);
define("°", { angle: 1 }, 1);
define("°F", { temperature: 1 }, 1);
define("$", { money: 1 }, 1);
define("$/h", { money: 1, time: -1 }, 1 / hour);
define("$/day", { money: 1, time: -1 }, 1 / day);
define("$/month", { money: 1, time: -1 }, 1 / month);
define("$/kWh", { money: 1, mass: -1, length: -2, time: 2 }, 1 / 3.6e6);
define("$/ft", { money: 1, length: -1 }, 1 / foot);
define("$/m", { money: 1, length: -1 }, 1);
define("$/ft²", { money: 1, length: -2 }, 1 / foot ** 2);
define("$/m²", { money: 1, length: -2 }, 1);
define("ft²/h", { length: 2, time: -1 }, foot ** 2 / hour);
define("m²/h", { length: 2, time: -1 }, 1 / hour);
define("ft/h", { length: 1, time: -1 }, foot / hour);
define("m/h", { length: 1, time: -1 }, 1 / hour);
define("yd³/h", { length: 3, time: -1 }, (3 * foot) ** 3 / hour);
define("m³/h", { length: 3, time: -1 }, 1 / hour);
define("ton/h", { mass: 1, time: -1 }, (2000 * pound) / hour);
define("t/h", { mass: 1, time: -1 }, 1000 / hour);
define("each/h", { time: -1 }, 1 / hour);
define("ft²/ton", { length: 2, mass: -1 }, foot ** 2 / (2000 * pound));
define("m²/t", { length: 2, mass: -1 }, 1 / 1000);

/** The unit of that name. Throws RangeError for a name that is not in the table. */
export function unitNamed(name: string): Unit {
  const unit = units.get(name);
  if (unit === undefined) {
    throw new RangeError(`Unit "${name}" is not known: add it to engine/units/unit.ts.`);
  }
  return unit;
}

/** The names of all units, in the order of the table. */
export const unitNames = (): readonly string[] => [...units.keys()];
