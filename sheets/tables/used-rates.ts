import { type TradeUnit, tradeUnit } from "./trade-units.js";

/** A rate of the price book that the sheets read, with the unit they need it in. */
export interface UsedRate {
  readonly code: string;
  readonly means: string;
  readonly unit: string;
  readonly group: "wage" | "burden" | "production" | "site" | "hire" | "business";
}

const rows =
  (group: UsedRate["group"]) =>
  (code: string, means: string, unit: string): UsedRate => ({ code, means, unit, group });

const wage = rows("wage");
const burden = rows("burden");
const production = rows("production");
const site = rows("site");
const hire = rows("hire");

/** Every rate that the sheets read. The value is the office's own; a missing one fails a check. */
export const usedRates: readonly UsedRate[] = [
  wage("wage-foreman", "Wage of the foreman", "$/hour"),
  wage("wage-operator", "Wage of the machine operator", "$/hour"),
  wage("wage-laborer", "Wage of a laborer", "$/hour"),
  wage("wage-electrician", "Wage of our own licensed electrician", "$/hour"),
  burden("burden-fica", "Social Security and Medicare, employer's part", "percent"),
  burden("burden-unemployment", "Unemployment insurance", "percent"),
  burden("burden-compensation", "Workers' compensation insurance", "percent"),
  burden("burden-health", "Health insurance", "percent"),
  burden("burden-vacation", "Vacation", "percent"),
  burden("burden-holidays", "Holidays", "percent"),
  burden("burden-sick", "Sick days", "percent"),
  burden("burden-tools", "Small tools", "percent"),
  burden("burden-raises", "Rises in wages during the year", "percent"),
  production("set-out", "Set out, mark utilities, protect the site", "each/hour"),
  production("strip", "Strip topsoil", "yd3/hour"),
  production("dig", "Dig basin and stream", "yd3/hour"),
  production("trench", "Dig and fill the pipe trench", "yd3/hour"),
  production("berm", "Place and compact the berm", "yd3/hour"),
  production("load-out", "Load a truck, spread a load", "load/hour"),
  production("liner-laid", "Lay liner with underlayment", "ft2/hour"),
  production("seam-made", "Make seams", "ft/hour"),
  production("crate-set", "Assemble and set storage crates", "each/hour"),
  production("pipe-laid", "Lay pipe", "ft/hour"),
  production("outlet-fitted", "Fit an outlet with its valve", "each/hour"),
  production("fall-built", "Build a fall and set its lip", "each/hour"),
  production("stone-set", "Carry and set stone", "ton/hour"),
  production("mortar-laid", "Mix and lay mortar", "yd3/hour"),
  production("wall-base", "Dig a wall's footing, lay and compact its base", "yd3/hour"),
  production("wall-built", "Build dry-laid wall", "ft2/hour"),
  production("start-up", "Set the pump, fill, tune the valves", "each/hour"),
  production("clean-up", "Clean up, hand over", "each/hour"),
  production("backfill", "Fill around the basin, compact in lifts", "yd3/hour"),
  production("spread", "Spread the topsoil kept", "yd3/hour"),
  production("trench-narrow", "Dig and fill a narrow trench by hand", "yd3/hour"),
  production("bedding-laid", "Spread bedding", "yd3/hour"),
  production("fill-line-laid", "Lay the fill line", "ft/hour"),
  production("conduit-run", "Run conduit and pull its wire", "ft/hour"),
  production("circuit-fitted", "Fit breaker and outlet, test the circuit", "each/hour"),
  production("shoring-set", "Set shoring and pull it again", "ft2/hour"),
  production("light-fitted", "Fit a light with its cable", "each/hour"),
  site("access-open", "Access: machine and truck reach the work", "factor"),
  site("access-narrow", "Access: small machine only", "factor"),
  site("access-hand", "Access: by hand and barrow", "factor"),
  site("soil-soft", "Soil: soft", "factor"),
  site("soil-common", "Soil: common earth", "factor"),
  site("soil-hard", "Soil: hard clay, roots", "factor"),
  site("soil-rock", "Soil: rocky", "factor"),
  site("haul-per-hundred-feet", "More time for each ‹100 ft|30.48 m› of haul on site", "percent"),
  hire("machine-day", "Machine, with fuel", "$/day"),
  hire("machine-delivery", "Machine brought and fetched", "$/each"),
  hire("compactor-day", "Plate compactor", "$/day"),
  hire("truck-load", "Truck load of soil hauled away", "$/load"),
  hire("stone-load", "Truck load of stone, gravel or sand delivered", "$/load"),
  hire("mat", "Ground mat for the job", "$/each"),
  hire("site-day", "Toilet, fence, crew truck: a day on site", "$/day"),
  hire("shoring", "Shoring or shields on hire for the job, of face held", "$/ft2"),
  hire("electrician-hour", "Licensed electrician, by the hour", "$/hour"),
  hire("inspection", "Inspection of a dig by a hired competent person", "$/each"),
  hire("engineer", "Engineer's design, of a wall or of a dig's protection", "$/each"),
  hire("permit", "Permit or plan review", "$/each"),
  rows("business")("overhead", "Overhead, of direct cost", "percent"),
];

/** The unit of a rate as a bid of either system writes it: `‹yd3|m3›/hour`. */
export function rateUnit(unit: string): string {
  const [of = "", an] = unit.split("/");
  if (an === undefined) return unit;
  return `${tradeUnit(of as TradeUnit)}/${tradeUnit(an as TradeUnit)}`;
}

/** A formula for a rate, as a number in the unit that the bid needs it in. */
export function rate(code: string): string {
  if (!usedRates.some((one) => one.code === code)) {
    throw new RangeError(`Rate "${code}" is not read: add it to sheets/tables/used-rates.ts.`);
  }
  return `PICK(used_rates.value,used_rates.code,"${code}")`;
}
