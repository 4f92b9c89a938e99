import type { Template } from "../../engine/template/index.js";
import { access } from "../parts/access/part.js";
import { assemble } from "../parts/assemble.js";
import { balance } from "../parts/balance/part.js";
import { basin } from "../parts/basin/part.js";
import { berms } from "../parts/berms/part.js";
import { book } from "../parts/book/part.js";
import { built } from "../parts/built/part.js";
import { builtRole } from "../parts/built/role.js";
import { clarifier } from "../parts/clarifier/part.js";
import { diggingSafety } from "../parts/digging-safety/part.js";
import { earthwork } from "../parts/earthwork/part.js";
import { electrical } from "../parts/electrical/part.js";
import { falls } from "../parts/falls/part.js";
import { fillLine } from "../parts/fill-line/part.js";
import { float } from "../parts/float/part.js";
import { job } from "../parts/job/part.js";
import { labor } from "../parts/labor/part.js";
import { lights } from "../parts/lights/part.js";
import { liner } from "../parts/liner/part.js";
import { lines } from "../parts/lines/part.js";
import { main } from "../parts/main/part.js";
import { materials } from "../parts/materials/part.js";
import { papers } from "../parts/papers/part.js";
import type { Part } from "../parts/part.js";
import { planting } from "../parts/planting/part.js";
import { pots } from "../parts/pots/part.js";
import { price } from "../parts/price/part.js";
import { pump } from "../parts/pump/part.js";
import { schedule } from "../parts/schedule/part.js";
import { stone } from "../parts/stone/part.js";
import { stream } from "../parts/stream/part.js";
import { streamDig } from "../parts/stream-dig/part.js";
import { sundries } from "../parts/sundries/part.js";
import { trees } from "../parts/trees/part.js";
import { trench } from "../parts/trench/part.js";
import { walls } from "../parts/walls/part.js";
import { weather } from "../parts/weather/part.js";
import { headingMark } from "../plan/page-line.js";

/**
 * What a disappearing waterfall is made of. On a worksheet, in a stage of the work and in a section of
 * a page, parts stand in this order.
 */
export const waterfallParts: readonly Part[] = [
  job,
  falls,
  pots,
  stream,
  lines,
  main,
  clarifier,
  balance,
  earthwork,
  trench,
  streamDig,
  berms,
  basin,
  weather,
  float,
  liner,
  pump,
  stone,
  diggingSafety,
  trees,
  walls,
  access,
  planting,
  fillLine,
  electrical,
  lights,
  labor,
  schedule,
  materials,
  sundries,
  price,
  papers,
  book,
  built,
];

/** A disappearing waterfall: falls, stream, buried basin, and all that it takes to build and price them. */
export const waterfall: Template = assemble(
  {
    name: "waterfall",
    version: 1,
    title: "Disappearing waterfall",
    headline: [
      "price",
      "margin",
      "man_hours",
      "work_days",
      "total_flow",
      "total_dynamic_head",
      "pump_watts",
      "basin_water_held",
      "basin_water_needed",
      "total_cost",
      "price_per_foot",
      "stone_tons",
    ],
    example: {
      table: "falls",
      input: "falls.width",
      typed: "3 ft 6 in",
      result: "falls.design_flow",
      figure: "total_flow",
    },
    roles: {
      price: "price",
      exact: "price_exact",
      cost: "total_cost",
      contingency: "contingency_cost",
      title: "job_title",
      customer: "customer",
      described: "described",
      toSend: "prices_to_renew",
      logo: "company_logo",
      givers: {
        walkedBy: "walked_by",
        walkedOn: "walked_on",
        chosenBy: "estimator",
        builtBy: "told_by",
        builtOn: "told_on",
      },
      built: builtRole,
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
      agreed: {
        name: "proposal",
        lines: "proposal_lines.says",
        draftMark: "DRAFT",
        marks: ["•", headingMark.trim()],
        sum: "contract_price",
        number: "proposal_number",
        site: "site",
        contractor: "company",
        days: "work_days",
        draws: { name: "draws.name", amount: "draws.amount" },
      },
    },
  },
  waterfallParts,
);
