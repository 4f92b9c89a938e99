import {
  book,
  type CellDeclaration,
  calc,
  check,
  count,
  date,
  head,
  hourlyFlow,
  money,
  power,
  smallLength,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";

/** Points that a pump's curve may have. */
export const curvePoints = Array.from({ length: capacity.curvePoints }, (_, i) => i + 1);

const columns = (name: string, make: (point: number) => CellDeclaration) =>
  Object.fromEntries(curvePoints.map((point) => [`${name}_${point}`, make(point)]));

/** How many points are filled in; a point in error counts, and shows as an error where it is used. */
const given = (name: string): string => curvePoints.map((k) => `IF(ISBLANK(${name}_${k}),0,1)`).join("+");

const falling = curvePoints
  .slice(1)
  .map((k) => `OR(points<${k},AND(flow_${k}>flow_${k - 1},head_${k}<head_${k - 1}))`)
  .join(",");

/** The pumps of the office book, as on the day of the bid. */
export const pumpsTable = table(
  "pumps",
  "Pumps in the office book",
  {
    rows: capacity.pumps,
    from: "pumps",
    filled: "LEN(code)>0",
    note: "Curves at full speed, from no flow on, as published by the manufacturers.",
  },
  {
    code: book(text, "Code"),
    description: book(text, "Description"),
    cost: book(money, "Cost"),
    supplier: book(text, "Supplier"),
    quoted_on: book(date, "Quoted on"),
    good_until: book(date, "Good until"),
    variable_speed: book(yesno, "Variable speed"),
    minimum_water: book(smallLength, "Least water, from the bottom"),
    recommended_low: book(hourlyFlow, "Recommended from"),
    recommended_high: book(hourlyFlow, "Recommended to"),
    outlet_size: book(text, "Outlet"),
    ...columns("flow", (k) => book(hourlyFlow, `Flow ${k}`)),
    ...columns("head", (k) => book(head, `Head ${k}`)),
    ...columns("watts", (k) => book(power, `Watts ${k}`)),
    points: calc(count, given("head"), "Points"),
    curve_sound: check(
      `AND(points>=3,${given("flow")}=points,${falling})`,
      "The curve of {code} has {points|0} points: it needs at least 3, flow rising and head falling, and is left out. Correct the office book.",
      { label: "Curve not usable", level: "look" },
    ),
  },
);
