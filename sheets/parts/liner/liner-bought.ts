import { area, calc, check, length, lines, percent } from "../../../engine/template/index.js";

export const linerTotals = lines("In short", {
  liner_area_needed: calc(area, "INDEX(liner_plans.needed,MAX(1,liner_plan_row))", "Area of the pieces"),
  liner_area_bought: calc(area, "SUM(liner_rolls.area_bought)", "Liner bought", { strong: true }),
  liner_waste: calc(percent, "IF(liner_area_bought>0,1-liner_area_needed/liner_area_bought,0)", "Waste"),
  seam_length: calc(length, "INDEX(liner_plans.seams,MAX(1,liner_plan_row))", "Seams to make", {
    strong: true,
    zero: "0",
  }),
  underlayment_area: calc(
    area,
    "liner_area_needed*underlayment_sides*(1+underlayment_laps)",
    "Underlayment, with laps",
    { strong: true },
  ),
  liner_not_wasted: check(
    "liner_waste<=0.5",
    "{liner_waste} of the liner bought is waste. Enter a stocked roll that fits the pieces, in liner_rolls on sheet Office rules.",
    { label: "Liner mostly waste", level: "look" },
  ),
});
