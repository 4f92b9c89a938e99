import {
  area,
  calc,
  count,
  decide,
  length,
  lines,
  percent,
  published,
  type TableBlock,
  table,
  text,
  weight,
  yesno,
} from "../../../engine/template/index.js";
import type { Lined } from "./lined.js";

const plans = ["pieces lapped at falls", "stream in one sheet", "stream and basin in one"] as const;
/** The one way to line a basin alone. */
const basinPlan = "basin in one piece";
const cheapest = "the cheapest";

/** What a piece is; each plan is made of some kinds. */
export const kinds = { basin: "basin", piece: "piece", pool: "pool", stream: "stream", both: "both" } as const;

/** Of a column, or a product of columns, what each plan takes. */
const ofCourse = (column: string) => (row: number) =>
  [
    `SUMPRODUCT((liner_pieces.kind<>"stream")*(liner_pieces.kind<>"both")*liner_pieces.${column})`,
    `SUMPRODUCT(IN_STREAM_SHEET(liner_pieces.kind,pools_within)*liner_pieces.${column})`,
    `SUMPRODUCT((liner_pieces.kind="both")*liner_pieces.${column})`,
  ][row - 1] as string;
const ofSheet = (row: number) => (column: string) =>
  `PICK(liner_pieces.${column},liner_pieces.kind,"${row === 2 ? kinds.stream : kinds.both}")`;

/** The sheets that cover more than one thing, tape laid along the ground. */
export const linerSheets = lines("Sheets down the stream", {
  liner_plan: decide(text, "Liner plan", {
    default: cheapest,
    choices: [cheapest, ...plans],
    note: "The cheapest: of liner and seams, among those whose heaviest cut can be carried.",
  }),
  pools_in_sheet: decide(yesno, "Pools inside the stream's sheet", { default: true }),
  pools_within: calc(count, "IF(pools_in_sheet,1,0)", "Pools in sheet, factor", { working: true }),
  pools_along: calc(
    length,
    "SUMPRODUCT((pools.length_counted>0)*(pools.length_counted+2*(pools.depth_counted+pools.rise+bed_stone_depth)))",
    "Length through pools",
    { note: "Down one side of each, along, and up the other." },
  ),
  stream_sheet_length: calc(
    length,
    "IF(runs_along+falls_along>0,edge_overlap+runs_along+falls_along+IF(pools_in_sheet,pools_along,0)+fall_overlap,0)",
    "Stream sheet, length",
    { note: "Along the bed and over each drop, from an edge at the top to a lap in the basin." },
  ),
  runs_along: calc(length, "SUM(runs.length_counted)", "Length along runs"),
  falls_along: calc(length, "shoulder_height/2", "Length over drops", { note: "Once for each level with a lip." }),
  stream_sheet_width: calc(length, "MAX(liner_pieces.in_stream)", "Stream sheet, width", {
    note: "The greatest that a run, fall or pool in it asks for, overlaps included. In a bend it is folded.",
  }),
});

/** The sensible ways to line the job, side by side. */
export const linerPlans = (lined: Lined): TableBlock => {
  const ways = lined === "basin" ? [basinPlan] : plans;
  const ofPlan = lined === "basin" ? (column: string) => `SUMPRODUCT(liner_pieces.${column})` : ofCourse;
  return table(
    "liner_plans",
    "Liner plans",
    { rows: ways.length, data: ways.map((plan) => ({ plan })) },
    {
      plan: published(text, "Plan", { source: "the ways that builders line a stream" }),
      needed: calc(area, ofPlan("length*liner_pieces.width"), "Area covered"),
      taken: calc(area, ofPlan("bought"), "Liner used"),
      seams: calc(length, ofPlan("seam"), "Seams", { zero: "–" }),
      waste: calc(percent, "IF(taken>0,1-needed/taken,0)", "Waste and laps"),
      heaviest: calc(
        weight,
        (row) => {
          const of = ofSheet(row);
          return row === 1 ? "0[lb]" : `${of("cut_length")}*${of("roll_width")}*liner_area_weight`;
        },
        "Heaviest cut of its sheet",
        { zero: "not weighed" },
      ),
      fits: calc(
        yesno,
        (row) => (row === 1 ? "TRUE" : "AND(needed>0,OR(liner_by_machine,heaviest<=people_to_carry*lift_limit))"),
        "Can be carried",
      ),
      counted: calc(area, "IF(fits,taken+seams*seam_worth,1000000[ft²])", "Liner, seams as liner", { working: true }),
    },
  );
};

/** A basin alone is lined by the one plan there is. */
export const basinPlanChosen = lines("Plan taken", {
  liner_plan_row: calc(count, "1", "Row of the liner plan", { working: true }),
});

export const linerPlanChosen = lines("Plan taken", {
  liner_plan_row: calc(
    count,
    `IF(liner_plan="${cheapest}",MATCH(MIN(liner_plans.counted),liner_plans.counted,0),PLACE_OR_ZERO(liner_plans.plan,liner_plan))`,
    "Row of the liner plan",
    { working: true },
  ),
  liner_planned: calc(text, "INDEX(liner_plans.plan,MAX(1,liner_plan_row))", "Liner plan taken", { strong: true }),
  stream_strips: calc(
    count,
    'IF(AND(liner_plan_row=2,PICK(liner_pieces.turned,liner_pieces.kind,"stream")),PICK(liner_pieces.strips,liner_pieces.kind,"stream"),0)',
    "Strips across the stream",
    { working: true },
  ),
  stream_seams_apart_counted: calc(
    length,
    'IF(stream_strips>1,PICK(liner_pieces.roll_width,liner_pieces.kind,"stream")-seam_lap,0[ft])',
    "Seams of the stream, apart",
    { working: true },
  ),
  stream_seam_at: calc(length, "MAX(0[ft],stream_seams_apart_counted-fall_overlap)", "First seam from basin's edge", {
    working: true,
    note: "Along the ground, over each drop; the first strip begins with its lap in the basin.",
  }),
  stream_seams_apart: calc(text, "~{stream_seams_apart_counted}", "Stream seams in words", {
    reader: "crew",
    working: true,
  }),
});
