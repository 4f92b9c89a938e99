import {
  calc,
  check,
  count,
  date,
  decide,
  density,
  lines,
  money,
  number,
  office,
  percent,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { unitChoices } from "../../tables/trade-units.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { soilVolume } from "../../vocabulary/quantities.js";
import { capacity } from "../capacity.js";
import { branchSizes, mainSizes } from "../lines/pipe-lines.js";
import { pricedColumns } from "./priced.js";

const laid = "(pipe_lines.bore>0)";

/** What the pipes ask for beyond what the other sheets say. */
export const bulkLoads = lines("Bulk loads and joints", {
  pipe_joints: calc(
    number,
    `2*(SUMPRODUCT(${laid}*(1+pipe_lines.elbows_90+pipe_lines.elbows_45))+COUNT_WHERE(pipe_lines.siphon_stop,"check valve")+main_elbows_90+main_elbows_45+main_valves+IF(check_valve_fitted,1,0)+1+IF(flexible_length>0,1,0))+3*(manifold_tees+main_tees)+manifold_caps+SUMPRODUCT(${laid}*(pipe_lines.pipe_size<>main_size))+(main_length+SUMPRODUCT(${laid}*pipe_lines.length))/20[ft]`,
    "Joints to cement",
    {
      decimals: 0,
      note: "Two for each valve, elbow, bulkhead fitting and the flexible pipe, three for each tee, one for each cap, bushing and ‹20 ft|6.1 m› of pipe: common practice, no source.",
    },
  ),
  bulk_weight: office(density, "Bulk weight, loose", {
    note: "Of sand and gravel.",
    default: 100,
    least: 50,
    most: 160,
    source: "common practice, no source",
  }),
  classes_share_trucks: office(yesno, "Bulk materials share trucks", {
    default: true,
    note: "No: each line comes by loads of its own.",
  }),
  bulk_load: calc(soilVolume, "MIN(haul_bed,truck_payload/MAX(1[lb/ft³],bulk_weight))", "Bulk load of a truck", {
    note: "By room or by weight, whichever is less.",
  }),
});

export const extraLines = table(
  "additional_items",
  "Additional items",
  { section: "Additional items", rows: capacity.additionalItems, filled: "needed>0" },
  pricedColumns({
    description: decide(text, "What"),
    code: itemCode("Code", { again: true, asked: "decision" }),
    needed: decide(number, "Needed", { again: true, least: 0, most: 1e6 }),
    unit: decide(text, "Unit", { again: true, choices: unitChoices }),
    waste: decide(percent, "Waste", { again: true, default: 0, least: 0, most: 1, decimals: 0 }),
    by_load: decide(yesno, "Bulk, comes by load", {
      default: false,
      note: "Yes for what is bought by weight or volume, where its price does not hold the delivery.",
    }),
  }),
);

export const taxes = table(
  "taxes",
  "Sales tax by class",
  {
    section: "Sales tax",
    rows: capacity.taxClasses,
    filled: "LEN(class)>0",
    data: [
      { class: "taxable", share: 0.07 },
      { class: "exempt", share: 0 },
    ],
    note: "The shares are those of the place of the job: look them up.",
  },
  {
    class: office(text, "Class"),
    share: office(percent, "Tax", { least: 0, most: 0.25, decimals: 3 }),
  },
);

const ofMaterials = (column: string) => `SUM(materials.${column})+SUM(additional_items.${column})`;

const unlisted = branchSizes.map((size) => `(pipe_lines.pipe_size<>"${size}")`).join("*");
const mainListed = mainSizes.map((size) => `main_size="${size}"`).join(",");

/** How many prices of materials, pump and subcontracts end before a day. */
const endBefore = (day: string) =>
  [
    `SUMPRODUCT((materials.cost>0)*(materials.good_until<${day}))`,
    `SUMPRODUCT((additional_items.cost>0)*(additional_items.good_until<${day}))`,
    `SUMPRODUCT((subcontracts.amount>0)*(subcontracts.quoted_until<${day}))`,
    `IF(pump_row>0,IF(INDEX(pumps.good_until,MAX(pump_row,1))<${day},1,0),0)`,
  ].join("+");

const byLoad = (unit: string) =>
  ["materials", "additional_items"]
    .map((name) => `SUMPRODUCT(${name}.by_load*(${name}.unit="${unit}")*${name}.order_quantity)`)
    .join("+");

export const materialsTotals = lines("In short", {
  truck_loads: calc(
    count,
    `IF(classes_share_trucks,WHOLE_UP((${byLoad("‹ton|t›")})/MAX(0.01,truck_payload/1[‹ton|t›])+(${byLoad("‹yd3|m3›")})/MAX(0.1,bulk_load/1[‹yd³|m³›])),SUM(materials.loads)+SUM(additional_items.loads))`,
    "Truck loads, bulk",
    { note: "Stone, gravel and sand." },
  ),
  materials_before_tax: calc(money, ofMaterials("cost"), "Materials before tax"),
  materials_tax: calc(money, ofMaterials("tax"), "Sales tax on materials"),
  prices_outlast_bid: check(
    `${endBefore("bid_date+good_for_days")}=0`,
    "Some prices end before this bid does, {good_for_days|0} after {bid_date}. Ask for longer quotes: see Good until in materials on sheet Materials.",
    { label: "Prices end before the bid", level: "look" },
  ),
  work_starts: calc(date, "DATE(YEAR(bid_date)+IF(start_month<MONTH(bid_date),1,0),start_month,1)", "Work start", {
    note: "The first of its month.",
  }),
  prices_end: calc(count, endBefore("work_starts"), "Prices ended before work"),
  prices_reach_start: check(
    "prices_end=0",
    "Prices that end before work starts on {work_starts}: {prices_end|0}. Ask for longer quotes, or add their rise to risks on sheet Decisions.",
    { label: "Prices end before work starts", level: "look" },
  ),
  pipe_counted: check(
    `AND(SUMPRODUCT(${laid}*${unlisted})=0,OR(${mainListed}))`,
    "A pipe has a size without a line, so it is not in the price. Enter pipe and fittings in additional_items on sheet Decisions.",
    { label: "Pipe without a line", level: "must" },
  ),
});
