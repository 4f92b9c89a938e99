import { area, calc, count, length, office, table, yesno } from "../../../engine/template/index.js";
import { stockedRolls } from "../../tables/liner.js";
import { capacity } from "../capacity.js";

export const rollNumbers = Array.from({ length: capacity.rolls }, (_, i) => i + 1);

const bought =
  "IF(whole_rolls,rolls_opened*roll_length,IF(length_step>0,WHOLE_UP(run_needed/length_step)*length_step,run_needed))";

/** What the supplier stocks, and what this job takes of it. */
export const linerRolls = table(
  "liner_rolls",
  "Stocked rolls",
  {
    rows: capacity.rolls,
    filled: "width>0",
    data: stockedRolls,
    note: "Widths and lengths from memory of usual stock: replace them by the supplier's. The last column tells what all pieces would take if cut from this roll alone.",
  },
  {
    width: office(length, "Roll width", { again: true, least: 1, most: 100, decimals: 1 }),
    roll_length: office(length, "Roll length", { default: 100, least: 5, most: 1000, decimals: 0 }),
    whole_rolls: office(yesno, "Sold by whole rolls only", { default: false }),
    run_needed: calc(length, (row) => `SUM_WHERE(liner_pieces.run,liner_pieces.roll,${row})`, "Length cut", {
      working: true,
    }),
    rolls_opened: calc(
      count,
      (row) =>
        `IF(whole_rolls,SUMPRODUCT((liner_cuts.key>=${row * 1000})*(liner_cuts.key<${(row + 1) * 1000})*liner_cuts.opened),0)`,
      "Whole rolls",
      { working: true },
    ),
    length_bought: calc(length, bought, "Length bought", { decimals: 1, zero: "–" }),
    area_bought: calc(area, "length_bought*width", "Liner bought", { zero: "–" }),
    alone: calc(
      area,
      (row) => `SUMPRODUCT((liner_pieces.in_plan=TRUE)*liner_working.cost_${row})`,
      "Liner, this roll alone",
    ),
  },
);
