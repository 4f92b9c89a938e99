import { calc, money, number, published, table, text } from "../../../engine/template/index.js";
import { countedIn, tradeUnit } from "../../tables/trade-units.js";
import type { methods } from "../access/access.js";

interface Hire {
  readonly what: string;
  readonly quantity: string;
  readonly unit: string;
  readonly rate_code: string;
}

/** The machine that comes in is hired, for its days and its way; by hand, none is. */
function hiredAs(method: (typeof methods)[number], what: string, code: string): Hire[] {
  const when = `IF(work_method="${method}",`;
  return [
    {
      what: `${what} on hire`,
      quantity: `${when}machine_hire_days/1[days],0)`,
      unit: "day",
      rate_code: `${code}-day`,
    },
    {
      what: `${what} brought and fetched`,
      quantity: `${when}IF(machine_days>0,1,0),0)`,
      unit: "each",
      rate_code: `${code}-delivery`,
    },
  ];
}

const hires: readonly Hire[] = [
  ...hiredAs("machine", "Machine", "machine"),
  ...hiredAs("small machine", "Small machine", "small-machine"),
  {
    what: "Plate compactor",
    quantity: "compactor_days/1[days]",
    unit: "day",
    rate_code: "compactor-day",
  },
  {
    what: "Soil hauled away",
    quantity: "haul_loads",
    unit: "load",
    rate_code: "truck-load",
  },
  {
    what: "Stone, gravel and sand delivered",
    quantity: "truck_loads",
    unit: "load",
    rate_code: "stone-load",
  },
  { what: "Ground mats", quantity: "ground_mats", unit: "each", rate_code: "mat" },
  {
    what: "Site kept open, rain days too",
    quantity: "days_allowed/1[days]",
    unit: "day",
    rate_code: "site-day",
  },
  {
    what: "Shoring and shields",
    quantity: countedIn("shored_face", "ft2"),
    unit: tradeUnit("ft2"),
    rate_code: "shoring",
  },
  {
    what: "Inspections of the digs by others",
    quantity: "inspections_hired",
    unit: "each",
    rate_code: "inspection",
  },
  { what: "Engineer's designs", quantity: "engineer_designs", unit: "each", rate_code: "engineer" },
  { what: "Permits and reviews", quantity: "permits_paid", unit: "each", rate_code: "permit" },
];

const source = "the list of hire of this template";

/** Machines, trucks and the site itself, at the rates of the office book. */
export const equipmentTable = table(
  "equipment",
  "Equipment, hauling and site",
  {
    rows: hires.length,
    data: hires.map(({ what, unit, rate_code }) => ({ what, unit, rate_code })),
  },
  {
    what: published(text, "What", { source }),
    quantity: calc(number, (row) => (hires[row - 1] as Hire).quantity, "Quantity", { decimals: 1 }),
    unit: published(text, "Unit", { source }),
    rate_code: published(text, "Rate", { source }),
    rate: calc(money, "PICK(used_rates.value,used_rates.code,rate_code)*1[$]", "Cost of one"),
    cost: calc(money, "ROUND(quantity*rate,2)", "Cost"),
  },
);
