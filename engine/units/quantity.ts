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

const declared: Quantity[] = [];

/** The unit that takes the place of a US unit in a system: `m` for `ft`; the unit itself where none does. */
export function counterpart(usUnit: string, system: UnitSystem): Unit {
  const found = declared.find(({ units }) => units.us.name === usUnit);
  return found === undefined ? unitNamed(usUnit) : unitOf(found, system);
}

function quantity(
  name: string,
  us: string,
  si: string,
  decimals: number,
  siDecimals = decimals,
  options: { kind?: QuantityKind; percent?: boolean; money?: boolean } = {},
): Quantity {
  const made: Quantity = Object.freeze({
    name,
    kind: options.kind ?? "number",
    units: Object.freeze({ us: unitNamed(us), si: unitNamed(si) }),
    decimals: Object.freeze({ us: decimals, si: siDecimals }),
    percent: options.percent ?? false,
    money: options.money ?? false,
  });
  declared.push(made);
  return made;
}

export const text = quantity("text", "", "", 0, 0, { kind: "text" });
export const yesno = quantity("yes or no", "", "", 0, 0, { kind: "yesno" });
export const date = quantity("date", "date", "date", 0, 0, { kind: "date" });

export const number = quantity("plain number", "", "", 2);
export const precise = quantity("plain number", "", "", 5);
export const count = quantity("count", "", "", 0);
export const percent = quantity("percent", "", "", 1, 1, { percent: true });

export const length = quantity("length on site", "ft", "m", 2);
export const smallLength = quantity("small length", "in", "mm", 2, 0);
export const bore = quantity("bore", "in", "mm", 3, 1);
export const roughnessHeight = quantity("roughness height", "in", "mm", 5, 4);
export const area = quantity("area", "ft²", "m²", 0, 1);
export const waterVolume = quantity("water volume", "gal", "L", 0);
export const soilVolume = quantity("soil volume", "yd³", "m³", 1);
export const spaceVolume = quantity("space", "ft³", "m³", 1, 2);
export const flow = quantity("flow", "gal/min", "L/min", 2, 1);
export const hourlyFlow = quantity("hourly flow", "gal/h", "L/h", 0);
export const flowPerWidth = quantity("flow per width of lip", "gal/h per in", "L/h per mm", 0, 1);
export const head = quantity("head", "ft", "m", 2, 3);
export const speed = quantity("speed", "ft/s", "m/s", 2);
export const waterLoss = quantity("depth a day", "in/day", "mm/day", 2, 1);
export const rainRate = quantity("rain rate", "in/h", "mm/h", 2, 0);
export const power = quantity("power", "W", "W", 0);
export const voltage = quantity("voltage", "V", "V", 0);
export const voltageDrop = quantity("voltage drop", "V", "V", 2);
export const current = quantity("current", "A", "A", 1);
export const conductorArea = quantity("area of a conductor", "cmil", "mm²", 0, 2);
export const energy = quantity("energy", "kWh", "kWh", 0);
export const weight = quantity("weight", "lb", "kg", 0);
export const tons = quantity("tons", "ton", "t", 2);
export const density = quantity("density", "lb/ft³", "kg/m³", 1, 0);
export const areaWeight = quantity("weight of an area", "lb/ft²", "kg/m²", 2);
export const vaporPressure = quantity("vapor pressure", "inHg", "kPa", 3);
export const viscosity = quantity("viscosity", "10⁻⁵ ft²/s", "mm²/s", 3);
export const heatOfMass = quantity("heat of a mass", "Btu/lb", "kJ/kg", 0);
export const angle = quantity("angle", "°", "°", 0);
export const hours = quantity("hours", "h", "h", 1);
export const days = quantity("days", "days", "days", 1);
export const hoursADay = quantity("hours a day", "h/day", "h/day", 1);
export const money = quantity("money", "$", "$", 2, 2, { money: true });
export const hourlyRate = quantity("money an hour", "$/h", "$/h", 2, 2, { money: true });
export const dailyRate = quantity("money a day", "$/day", "$/day", 2, 2, { money: true });
export const monthlyCost = quantity("money a month", "$/month", "$/month", 2, 2, { money: true });
export const energyRate = quantity("price of energy", "$/kWh", "$/kWh", 3, 3, { money: true });
export const moneyPerLength = quantity("money per length", "$/ft", "$/m", 2, 2, { money: true });
