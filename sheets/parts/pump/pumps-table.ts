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
    placeholder: book(yesno, "Placeholder"),
    ...columns("flow", (k) => book(hourlyFlow, `Flow ${k}`)),
    ...columns("head", (k) => book(head, `Head ${k}`)),
    ...columns("watts", (k) => book(power, `Watts ${k}`)),
    points: calc(count, "HEADS_GIVEN(head_1..head_8)", "Points"),
    curve_sound: check(
      "AND(points>=3,FLOWS_GIVEN(flow_1..flow_8)=points,FLOWS_RISE(points,flow_1..flow_8),HEADS_FALL(points,head_1..head_8))",
      "The curve of {code} has {points|0} points: it needs at least 3, flow rising and head falling, and is left out. Correct the office book.",
      { label: "Curve not usable", level: "look" },
    ),
  },
);
