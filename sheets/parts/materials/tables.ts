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
import { quotedOr } from "./job-quotes.js";
import { loadsBy, pricedColumns } from "./priced.js";

const laid = "(pipe_lines.bore>0)";

/** What the pipes ask for beyond what the other sheets say. */
export const bulkLoads = lines("Bulk loads and joints", {
  line_joints: calc(
    number,
    `SUMPRODUCT(${laid}*LINE_JOINTS(pipe_lines.elbows_90,pipe_lines.elbows_45,pipe_lines.siphon_stop,pipe_lines.length))`,
    "Joints of the lines",
    { working: true, decimals: 1 },
  ),
  main_joints: calc(
    number,
    "2*(1+main_elbows_90+main_elbows_45+main_valves+IF(check_valve_fitted,1,0)+IF(flexible_length>0,1,0))+main_length/20[ft]",
    "Joints of the main",
    { working: true, decimals: 1 },
  ),
  pipe_joints: calc(
    number,
    `line_joints+main_joints+3*(manifold_tees+main_tees)+manifold_caps+SUMPRODUCT(${laid}*(pipe_lines.pipe_size<>main_size))`,
    "Joints to cement",
    {
      working: true,
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
    working: true,
    note: "By room or by weight, whichever is less.",
  }),
});

/** Of one line, in its row. */
const alone = loadsBy();

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
    loads: calc(count, `IF(by_load,WHOLE_UP(${alone.weight}+${alone.volume}),0)`, "Truck loads if alone", {
      working: true,
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

/** How many prices of materials end before a day. */
const materialsEnd = (day: string) =>
  `ENDED(materials.cost,materials.good_until,${day})+ENDED(additional_items.cost,additional_items.good_until,${day})`;

/** How many prices of the pump and of work by others end before a day. */
const othersEnd = (day: string) =>
  `ENDED(subcontracts.amount,subcontracts.quoted_until,${day})+IF(AND(pump_row>0,pump_good_until<${day}),1,0)`;

const loadsOf = (table: string, label: string, carried = `${table}.by_load*1`) => {
  const { weight, volume } = loadsBy(`${table}.`, carried);
  const cell = (formula: string, by: string) =>
    calc(number, `SUMPRODUCT(${formula})`, `Loads by ${by}, ${label}`, { decimals: 2, working: true });
  return { weight: cell(weight, "weight"), volume: cell(volume, "volume") };
};
const materialLoads = loadsOf("materials", "materials", "materials.by_load*(materials.delivered=FALSE)");
const additionalLoads = loadsOf("additional_items", "additional");

export const materialsTotals = lines("In short", {
  weight_loads: materialLoads.weight,
  volume_loads: materialLoads.volume,
  own_weight_loads: additionalLoads.weight,
  own_volume_loads: additionalLoads.volume,
  truck_loads: calc(
    count,
    "IF(classes_share_trucks,WHOLE_UP(weight_loads+volume_loads+own_weight_loads+own_volume_loads),SUM(bulk_lines.loads)+SUM(additional_items.loads))",
    "Truck loads, bulk",
    { note: "Stone, gravel and sand." },
  ),
  materials_before_tax: calc(money, ofMaterials("cost"), "Materials before tax"),
  materials_tax: calc(money, ofMaterials("tax"), "Sales tax on materials"),
  pump_good_until: calc(
    date,
    `IF(pump_row>0,${quotedOr("good_until", "pump_code", "INDEX(pumps.good_until,MAX(pump_row,1))")},0)`,
    "Pump price good until",
  ),
  materials_end_early: calc(count, materialsEnd("bid_good_until"), "Material prices ended before bid", {
    working: true,
  }),
  prices_outlast_bid: check(
    `materials_end_early+${othersEnd("bid_good_until")}=0`,
    "Some prices end before this bid does, {good_for_days|0} after {bid_date}. Ask for longer quotes: see Good until on sheet Materials.",
    { label: "Prices end before the bid", level: "look" },
  ),
  work_starts: calc(date, "DATE(YEAR(bid_date)+IF(start_month<MONTH(bid_date),1,0),start_month,1)", "Work start", {
    working: true,
    note: "The first of its month.",
  }),
  materials_end: calc(count, materialsEnd("work_starts"), "Material prices ended before work", { working: true }),
  prices_end: calc(count, `materials_end+${othersEnd("work_starts")}`, "Prices ended before work", { working: true }),
  prices_to_renew: calc(
    text,
    'IF(prices_end=0,"","renew "&FIXED(prices_end,0)&IF(prices_end=1," price that ends"," prices that end")&" before the work starts")',
    "Prices to renew",
    { working: true },
  ),
  prices_outlast_start: check(
    "prices_end=0",
    "Prices that end before work starts on {work_starts}: {prices_end|0}. Ask for longer quotes, or add their rise to risks on sheet Decisions.",
    { label: "Prices end before work starts", level: "look" },
  ),
  pipe_counted: check(
    `SUMPRODUCT(${laid}*LINE_SIZE_UNLISTED(pipe_lines.pipe_size))+MAIN_SIZE_UNLISTED(main_size)=0`,
    "A pipe has a size without a line, so it is not in the price. Enter pipe and fittings in additional_items on sheet Decisions.",
    { label: "Pipe without a line", level: "must" },
  ),
});
