import { type Unit, unitNamed } from "./unit.js";

/** The two systems a template compiles to: US customary and SI. */
export type UnitSystem = "us" | "si";

export const unitSystems: readonly UnitSystem[] = ["us", "si"];

/** What a quantity's values are: numbers with a unit, or one of the plain kinds. */
export type QuantityKind = "number" | "text" | "yesno" | "date";

/**
 * What a cell holds: a name for people, the unit it is shown in under each system,
 * and the decimals it is shown with. Templates declare quantities, never units, so
 * that one template compiles to either system.
 */
export interface Quantity {
  readonly name: string;
  readonly kind: QuantityKind;
  readonly units: Readonly<Record<UnitSystem, Unit>>;
  readonly decimals: Readonly<Record<UnitSystem, number>>;
  readonly percent: boolean;
  readonly money: boolean;
}

/** The unit in which a quantity is held and shown under a system. */
export const unitOf = (quantity: Quantity, system: UnitSystem): Unit => quantity.units[system];

/** What to multiply a number in US units by, to have it in the system asked for. */
export function fromUs(quantity: Quantity, system: UnitSystem): number {
  return ratio(quantity.units.us, quantity.units[system]);
}

/**
 * How many of unit `to` make one of unit `from`, to 15 significant digits so that
 * 12 inches come out as 12 and not as 12.000000000000002.
 */
export function ratio(from: Unit, to: Unit): number {
  return Number((from.size / to.size).toPrecision(15));
}

/** The unit that takes the place of a US unit in SI. */
const inSi: Readonly<Record<string, string>> = {
  ...{ ft: "m", in: "mm", "ft²": "m²", cmil: "mm²", gal: "L", "yd³": "m³", "ft³": "m³" },
  ...{ "gal/min": "L/min", "gal/h": "L/h", "gal/h per in": "L/h per mm", "ft/s": "m/s" },
  ...{ "in/day": "mm/day", "in/h": "mm/h", lb: "kg", ton: "t", "lb/ft³": "kg/m³" },
  ...{ "lb/ft²": "kg/m²", inHg: "kPa", "10⁻⁵ ft²/s": "mm²/s", "Btu/lb": "kJ/kg", "$/ft": "$/m" },
  ...{ "ton/ft": "t/m" },
};

/** The unit that takes the place of a US unit in a system: `m` for `ft`; the unit itself where none does. */
export const counterpart = (usUnit: string, system: UnitSystem): Unit =>
  unitNamed(system === "us" ? usUnit : (inSi[usUnit] ?? usUnit));

/**
 * Declares a quantity: its name, its US unit (whose counterpart it has in SI) and the decimals it
 * is shown with in either system; `si` names another unit than that counterpart. A trade declares its own with its sheets.
 */
export function quantity(
  name: string,
  us: string,
  decimals: number,
  siDecimals = decimals,
  options: { kind?: QuantityKind; percent?: boolean; money?: boolean; si?: string } = {},
): Quantity {
  return Object.freeze({
    name,
    kind: options.kind ?? "number",
    units: Object.freeze({
      us: unitNamed(us),
      si: options.si === undefined ? counterpart(us, "si") : unitNamed(options.si),
    }),
    decimals: Object.freeze({ us: decimals, si: siDecimals }),
    percent: options.percent ?? false,
    money: options.money ?? false,
  });
}

export const text = quantity("text", "", 0, 0, { kind: "text" });
export const yesno = quantity("yes or no", "", 0, 0, { kind: "yesno" });
export const date = quantity("date", "date", 0, 0, { kind: "date" });

export const number = quantity("plain number", "", 2);
export const precise = quantity("plain number", "", 5);
export const count = quantity("count", "", 0);
export const percent = quantity("percent", "", 1, 1, { percent: true });

export const length = quantity("length on site", "ft", 2);
export const smallLength = quantity("small length", "in", 2, 0);
export const bore = quantity("bore", "in", 3, 1);
export const area = quantity("area", "ft²", 0, 1);
export const spaceVolume = quantity("space", "ft³", 1, 2);
export const flow = quantity("flow", "gal/min", 0);
export const hourlyFlow = quantity("hourly flow", "gal/h", 0);
export const head = quantity("head", "ft", 2, 3);
export const speed = quantity("speed", "ft/s", 2);
export const power = quantity("power", "W", 0);
export const voltage = quantity("voltage", "V", 0);
export const voltageDrop = quantity("voltage drop", "V", 2);
export const current = quantity("current", "A", 1);
export const energy = quantity("energy", "kWh", 0);
export const weight = quantity("weight", "lb", 0);
export const tons = quantity("tons", "ton", 1);
export const density = quantity("density", "lb/ft³", 1, 0);
export const areaWeight = quantity("weight of an area", "lb/ft²", 2);
export const angle = quantity("angle", "°", 0);
export const hours = quantity("hours", "h", 1);
export const days = quantity("days", "days", 1);
export const hoursADay = quantity("hours a day", "h/day", 1);
export const money = quantity("money", "$", 2, 2, { money: true });
export const hourlyRate = quantity("money an hour", "$/h", 2, 2, { money: true });
export const dailyRate = quantity("money a day", "$/day", 2, 2, { money: true });
export const monthlyCost = quantity("money a month", "$/month", 2, 2, { money: true });
export const energyRate = quantity("price of energy", "$/kWh", 3, 3, { money: true });
export const moneyPerLength = quantity("money per length", "$/ft", 0, 0, { money: true });
