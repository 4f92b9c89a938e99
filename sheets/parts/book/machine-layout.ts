import type { BookColumn, BookRow, BookTable } from "../../../engine/template/book-layout.js";
import { placeholderColumn } from "../../../engine/template/book-layout.js";
import { machineMethods } from "../../tables/work-methods.js";
import { capacity } from "../capacity.js";

const points = Array.from({ length: capacity.liftingPoints }, (_, i) => i + 1);
const fewestPoints = 2;

const point = (at: number): BookColumn[] => {
  const figure = (key: string, means: string): BookColumn => ({
    key: `${key}_${at}`,
    kind: "number",
    least: 0.1,
    required: at <= fewestPoints,
    means,
  });
  return [
    figure("radius", `Radius at point ${at} of the chart, ‹ft|m›.`),
    figure("lift", `Lift allowed there over the side, with its attachment, ‹lb|kg›.`),
  ];
};

/** A chart as a small excavator's might be, for each method that a machine works by. */
const standIn = (code: string, method: string, lifts: readonly string[]): BookRow => ({
  code,
  description: `PLACEHOLDER: ${method}`,
  method,
  chart_copied: false,
  source: "PLACEHOLDER: common practice, no source",
  ...Object.assign({}, ...lifts.map((lift, i) => ({ [`radius_${i + 1}`]: radii[i], [`lift_${i + 1}`]: lift }))),
  placeholder: true,
});

const radii = ["‹8|2.5›", "‹10|3›", "‹12|3.5›", "‹14|4.5›"];

/** The office book's machines, each with the chart that is fixed in its cab. */
export const machineLayout: BookTable = {
  name: "machines",
  sheet: "Machines",
  means: "Machines that lift, each with the lifting chart in its cab. A job names one as machine_choice.",
  optional: true,
  rule: chartFault,
  starter: [
    standIn("machine", "machine", ["‹2400|1090›", "‹1900|860›", "‹1500|680›", "‹1200|540›"]),
    standIn("small-machine", "small machine", ["‹1200|540›", "‹900|400›", "‹700|310›", "‹500|220›"]),
  ],
  columns: [
    { key: "code", kind: "code", required: true, means: "What the office calls it; each code once." },
    { key: "description", kind: "text", required: true, means: "What it is, as the crew's page names it." },
    {
      key: "method",
      kind: "text",
      required: true,
      choices: machineMethods,
      means:
        "The method of work that it serves: its hire is that method's rate. Of several, the first is taken unless a job names one.",
    },
    {
      key: "chart_copied",
      kind: "yesno",
      means: "yes: the chart was copied from the cab of this machine. Without, its row is a placeholder.",
    },
    { key: "source", kind: "text", means: "Which chart, and who copied it when." },
    ...points.flatMap(point),
    placeholderColumn,
  ],
};

/** What is wrong with a machine's chart; undefined where a lift can be read from it. */
function chartFault(row: BookRow): string | undefined {
  if (row.chart_copied !== true && row.placeholder !== true) {
    return "nobody says that its chart was copied from its cab. Copy it, and set chart_copied to yes; until then mark the row as a placeholder.";
  }
  for (const at of points.slice(1)) {
    const [radius, lift, nearer, more] = [`radius_${at}`, `lift_${at}`, `radius_${at - 1}`, `lift_${at - 1}`].map(
      (key) => row[key],
    );
    if (radius === undefined && lift === undefined) continue;
    if (radius === undefined || lift === undefined) {
      return `point ${at} of the chart lacks its radius or its lift. Give both, or neither.`;
    }
    if (nearer === undefined || more === undefined) {
      return `point ${at} of the chart follows a blank one. Close the gap.`;
    }
    if (radius <= nearer) {
      return `radius_${at} is ${radius}, but radius_${at - 1} is ${nearer}: the radius must rise from point to point. Put the points in order.`;
    }
    if (lift > more) {
      return `lift_${at} is ${lift}, but lift_${at - 1} is ${more}: farther out no machine lifts more. Copy the chart again.`;
    }
  }
  return undefined;
}
