import { type Template, template } from "../../engine/template/index.js";
import { balanceSheet } from "../parts/balance/balance.js";
import { basinSheet } from "../parts/basin/sheet.js";
import { priceBookLayout } from "../parts/book/price-book.js";
import { pricesSheet } from "../parts/book/prices.js";
import { groundSheet } from "../parts/earthwork/sheet.js";
import { electricSheet } from "../parts/electrical/sheet.js";
import { fallsSheet } from "../parts/falls/falls.js";
import { jobSheet } from "../parts/job/job.js";
import { laborSheet } from "../parts/labor/sheet.js";
import { linerSheet } from "../parts/liner/sheet.js";
import { pipingSheet } from "../parts/lines/piping.js";
import { takeoffSheet } from "../parts/materials/sheet.js";
import { paperSheets } from "../parts/papers/sheets.js";
import { priceSheet } from "../parts/price/sheet.js";
import { pumpSheet, pumpsSheet } from "../parts/pump/pump.js";
import { rainSheet } from "../parts/schedule/rain.js";
import { stoneSheet } from "../parts/stone/sheet.js";
import { streamSheet } from "../parts/stream/stream.js";
import { basinFormulas } from "../vocabulary/basin.js";
import { channelFormulas } from "../vocabulary/channel.js";
import { electricFormulas } from "../vocabulary/electric.js";
import { evaporationFormulas } from "../vocabulary/evaporation.js";
import { groundFormulas } from "../vocabulary/ground.js";
import { linerFormulas } from "../vocabulary/liner.js";
import { moneyFormulas } from "../vocabulary/money.js";
import { pipeFormulas } from "../vocabulary/pipe.js";
import { pumpFormulas } from "../vocabulary/pump.js";
import { stoneFormulas } from "../vocabulary/stone.js";
import { weatherFormulas } from "../vocabulary/weather.js";
import { weirFormulas } from "../vocabulary/weir.js";
import { waterTablesSheet } from "../water-tables.js";

/** A disappearing waterfall: falls, stream, buried basin, and all that it takes to build and price them. */
export const waterfall: Template = template({
  name: "waterfall",
  version: 1,
  title: "Disappearing waterfall",
  headline: [
    "price",
    "price_per_foot",
    "total_cost",
    "margin",
    "total_flow",
    "total_dynamic_head",
    "pump_watts",
    "basin_water_held",
    "stone_tons",
    "work_days",
  ],
  prices: priceBookLayout,
  roles: {
    price: "price",
    exact: "price_exact",
    cost: "total_cost",
    contingency: "contingency_cost",
    title: "job_title",
    customer: "customer",
    sections: [
      { label: "Material", name: "material_cost" },
      { label: "Labor", name: "labor_in_price" },
      { label: "Equipment, hauling and site", name: "equipment_cost" },
      { label: "Work by others", name: "subcontract_cost" },
      { label: "Overhead", name: "overhead_cost" },
      { label: "Contingency", name: "contingency_cost" },
      { label: "Profit", name: "profit" },
    ],
    goodUntil: "items.good_until",
    told: [
      "falls.width",
      "falls.drop",
      "falls.look",
      "runs.length",
      "runs.width",
      "pools.length",
      "pools.width",
      "walls.length",
      "walls.height",
      "lights_wanted",
      "options.taken",
    ],
    office: [
      "crew_size",
      "shift_hours",
      "pay_whole_days",
      "tasks",
      "additional_tasks",
      "rain_stops_work",
      "rain_confidence",
      "work_week",
      "materials.waste",
      "taxes",
      "margin_wanted",
      "contingency_share",
      "risks",
      "risk_confidence",
      "labor_overrun_tested",
      "rounding_step",
      "hire_in_rain",
    ],
    agreed: {
      name: "proposal",
      lines: "proposal_lines.says",
      draftMark: "DRAFT",
      sum: "contract_price",
      number: "proposal_number",
      site: "site",
      contractor: "company",
      days: "work_days",
      draws: { name: "draws.name", amount: "draws.amount" },
    },
  },
  sheets: [
    jobSheet,
    fallsSheet,
    streamSheet,
    pipingSheet,
    balanceSheet,
    pumpSheet,
    electricSheet,
    basinSheet,
    linerSheet,
    stoneSheet,
    groundSheet,
    laborSheet,
    rainSheet,
    takeoffSheet,
    priceSheet,
    ...paperSheets,
    pricesSheet,
    pumpsSheet,
    waterTablesSheet,
  ],
  formulas: [
    ...pipeFormulas,
    ...weirFormulas,
    ...channelFormulas,
    ...pumpFormulas,
    ...electricFormulas,
    ...basinFormulas,
    ...evaporationFormulas,
    ...linerFormulas,
    ...stoneFormulas,
    ...groundFormulas,
    ...moneyFormulas,
    ...weatherFormulas,
  ],
});
