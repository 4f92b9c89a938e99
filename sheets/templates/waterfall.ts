import { type Template, template } from "../../engine/template/index.js";
import { balanceSheet } from "../balance.js";
import { basinSheet } from "../basin.js";
import { electricSheet } from "../electric.js";
import { fallsSheet } from "../falls.js";
import { basinFormulas } from "../formulas/basin.js";
import { channelFormulas } from "../formulas/channel.js";
import { electricFormulas } from "../formulas/electric.js";
import { evaporationFormulas } from "../formulas/evaporation.js";
import { groundFormulas } from "../formulas/ground.js";
import { linerFormulas } from "../formulas/liner.js";
import { moneyFormulas } from "../formulas/money.js";
import { pipeFormulas } from "../formulas/pipe.js";
import { pumpFormulas } from "../formulas/pump.js";
import { stoneFormulas } from "../formulas/stone.js";
import { weatherFormulas } from "../formulas/weather.js";
import { weirFormulas } from "../formulas/weir.js";
import { groundSheet } from "../ground.js";
import { jobSheet } from "../job.js";
import { laborSheet } from "../labor.js";
import { linerSheet } from "../liner.js";
import { mainSheet } from "../main.js";
import { outletsSheet } from "../outlets.js";
import { paperSheets } from "../papers.js";
import { priceSheet } from "../price.js";
import { priceBookLayout } from "../price-book.js";
import { pricesSheet } from "../prices.js";
import { pumpSheet, pumpsSheet } from "../pump.js";
import { rainSheet } from "../rain.js";
import { reachesSheet } from "../reaches.js";
import { stoneSheet } from "../stone.js";
import { takeoffSheet } from "../takeoff.js";
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
    "total_head",
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
      "reaches.length",
      "reaches.width",
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
      "own_tasks",
      "rain_stops_work",
      "rain_confidence",
      "work_week",
      "lines.waste",
      "taxes",
      "margin_wanted",
      "contingency_share",
      "risks",
      "risk_confidence",
      "hours_overrun",
      "rounding_step",
      "hire_in_rain",
    ],
    agreed: {
      name: "proposal",
      lines: "proposal_lines.says",
      draftMark: "DRAFT",
      sum: "contract_price",
      number: "offer_number",
      site: "site",
      contractor: "company",
      days: "work_days",
      draws: { name: "draws.name", amount: "draws.amount" },
    },
  },
  sheets: [
    jobSheet,
    fallsSheet,
    reachesSheet,
    outletsSheet,
    mainSheet,
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
