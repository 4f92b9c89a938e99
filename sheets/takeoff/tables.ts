import {
  calc,
  check,
  count,
  input,
  length,
  lines,
  money,
  number,
  percent,
  table,
  text,
} from "../../engine/template/index.js";
import { itemUnits } from "../price-book.js";
import { branchSizes, mainSizes } from "./pipe-lines.js";
import { pricedColumns } from "./priced.js";

/** What the pipes and lights ask for beyond what the other sheets say. */
export const takeoffInputs = lines("For the lines below", {
  flexible_length: input(length, "Flexible pipe at the pump", { default: 6, least: 0, most: 100 }),
  lights_wanted: input(count, "Lights", { default: 0, least: 0, most: 60, whole: true }),
  cable_a_light: input(length, "Cable for each light", { default: 20, least: 0, most: 300 }),
  pipe_joints: calc(
    number,
    '2*(COUNTIF(outlets.flow_wanted,">0")*2+SUM(outlets.elbows_90)+SUM(outlets.elbows_45)+main_elbows_90+main_elbows_45)+(main_length+SUM(outlets.length))/20[ft]',
    "Joints to cement",
    {
      decimals: 0,
      note: "Two for each valve, tee and elbow, one each 20 ft of pipe: common practice, no source.",
    },
  ),
});

export const extraLines = table(
  "extra_lines",
  "Further things to buy for this job",
  { rows: 8, filled: "needed>0" },
  pricedColumns({
    description: input(text, "What"),
    code: input(text, "Code"),
    needed: input(number, "Needed", { least: 0, most: 1e6 }),
    unit: input(text, "Unit", { choices: itemUnits }),
    waste: input(percent, "Waste", { default: 0, least: 0, most: 1, decimals: 0 }),
  }),
);

export const taxes = table(
  "taxes",
  "Sales tax on what is bought, by class",
  {
    rows: 4,
    filled: "LEN(class)>0",
    data: [
      { class: "taxable", share: 0.07 },
      { class: "exempt", share: 0 },
    ],
    note: "The shares are those of the place of the job: look them up.",
  },
  {
    class: input(text, "Class"),
    share: input(percent, "Tax", { least: 0, most: 0.25, decimals: 3 }),
  },
);

const goods = (column: string) => `SUM(lines.${column})+SUM(extra_lines.${column})`;

const unlisted = branchSizes.map((size) => `(outlets.pipe_size<>"${size}")`).join("*");
const mainListed = mainSizes.map((size) => `main_size="${size}"`).join(",");

export const takeoffTotals = lines("In short", {
  goods_cost: calc(money, goods("cost"), "Goods, before tax"),
  goods_tax: calc(money, goods("tax"), "Sales tax on them"),
  prices_outlast_offer: check(
    "SUMPRODUCT((lines.cost>0)*(lines.good_until<bid_date+good_for_days))+SUMPRODUCT((extra_lines.cost>0)*(extra_lines.good_until<bid_date+good_for_days))=0",
    "Some prices end before this bid does, {good_for_days|0} after {bid_date}: see the column Price good until.",
    { label: "Prices hold as long as the bid", level: "look" },
  ),
  pipe_counted: check(
    `AND(SUMPRODUCT((outlets.flow_wanted>0)*${unlisted})=0,OR(${mainListed}))`,
    "A pipe has a size without a line in the takeoff, so it and its fittings are not in the price. Add them as further things to buy.",
    { label: "Every pipe has a line", level: "must" },
  ),
});
