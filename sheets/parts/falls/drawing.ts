import {
  type Block,
  type ChartBlock,
  calc,
  chart,
  count,
  length,
  type Series,
  table,
} from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";
import { course, courseEnds, lipsNumbered, pipeRows, profileRatio } from "./course.js";

/** Corners of a level's bed: start and end of its pool, lip, foot of the fall, end of its runs. */
const corners = [
  { along: "pool_along", water: "top", depth: "pool_depth" },
  { along: "lip_along", water: "top", depth: "pool_depth" },
  { along: "lip_along", water: "top", depth: "lip_depth" },
  { along: "lip_along", water: "foot", depth: "run_depth" },
  { along: "finish_along", water: "finish", depth: "run_depth" },
] as const;

const ofCourse = (column: (corner: (typeof corners)[number]) => string) => (row: number) => {
  const corner = corners[(row - 1) % corners.length] as (typeof corners)[number];
  return `INDEX(course.${column(corner)},${Math.ceil(row / corners.length)})`;
};

const points = table(
  "course_points",
  "Water course, corner by corner",
  { rows: capacity.falls * corners.length },
  {
    along: calc(
      length,
      ofCourse(({ along }) => along),
      "Along",
    ),
    water: calc(
      length,
      ofCourse(({ water }) => water),
      "Water",
    ),
    bed: calc(length, (row) => `water-${ofCourse(({ depth }) => depth)(row)}`, "Bed"),
    bank: calc(length, (row) => `water+${ofCourse(() => "bank")(row)}`, "Bank"),
  },
);

const levelOf = (row: number) => capacity.falls + 1 - Math.max(1, Math.min(capacity.falls, Math.floor((row - 1) / 2)));
const atEnd = (row: number, pump: string, ends: readonly [string, string], top: string) =>
  row <= 2 ? pump : row > pipeRows - 2 ? top : `INDEX(course.${ends[(row - 1) % 2]},level)`;

const pipe = table(
  "course_pipe",
  "Pipe beside the water course",
  {
    rows: pipeRows,
    note: "Drawn in a trench along the banks, up to the highest level with a line.",
  },
  {
    level: calc(count, (row) => `MAX(${levelOf(row)},PICK_OR(levels.number,levels.stretch,1,1))`, "Level"),
    along: calc(
      length,
      (row) => atEnd(row, "pump_along", ["finish_along", "lip_along"], "INDEX(course.pool_along,level)"),
      "Along",
    ),
    up: calc(
      length,
      (row) => {
        if (row === 1) return "basin_bottom";
        if (row === pipeRows) return "LARGEST_WHERE(pipe_lines.height,pipe_lines.outlet_level,level)-rim_above_water";
        const trench = (column: string) => `INDEX(course.${column},level)+INDEX(course.bank,level)-trench_depth`;
        if (row === 2) return trench("finish");
        return trench(row < pipeRows - 1 && row % 2 === 1 ? "finish" : "foot");
      },
      "Up",
    ),
  },
);

/** The basin at the end of the stream. */
const basin = table(
  "course_basin",
  "Basin below the water course",
  { rows: 4 },
  {
    along: calc(length, (row) => (row < 3 ? "course_finish" : "basin_finish"), "Along"),
    outline: calc(length, (row) => (row === 1 || row === 4 ? "0[ft]" : "basin_bottom"), "Outline"),
    full: calc(length, "level_at_rest-basin_depth", "Full, pump off"),
    running: calc(length, "level_running-basin_depth", "Running"),
  },
);

const at = (from: string, up: string) => ({ x: `${from}.along`, y: `${from}.${up}`, marks: "line" }) as const;
const banks: Series = { label: "Banks", ...at("course_points", "bank"), look: "dashed" };
const bed: Series = { label: "Bed", ...at("course_points", "bed"), look: "heavy" };
const water: Series = { label: "Water", ...at("course_points", "water"), look: "broad" };
const outline: Series = { label: "Basin", ...at("course_basin", "outline"), look: "heavy", legend: false };
const full: Series = { label: "Full, pump off", ...at("course_basin", "full"), look: "dotted" };
const running: Series = { label: "Running", ...at("course_basin", "running"), look: "broad", legend: false };
const supply: readonly Series[] = [
  { label: "Pipe", ...at("course_pipe", "up"), look: "long dashes" },
  { label: "Pump", x: "pump_along", y: "basin_bottom", marks: "points" },
  { label: "Outlets", x: "manifold_lines.outlet_along", y: "manifold_lines.outlet_up", marks: "points" },
];
const named: readonly Series[] = [
  { label: "Falls", x: "course.said_along", y: "course.said_up", marks: "names", says: "course.said", at: "right" },
  { label: "Basin", x: "basin_middle", y: "basin_bottom", marks: "names", says: "basin_said", at: "below" },
  { label: "Scale", x: "course_width", y: "course_up", marks: "frame" },
  { label: "Scale", x: "course_width", y: "course_bottom", marks: "frame" },
];

/** The water course in profile, to scale. */
export const profile = chart(
  "Water course in profile",
  "Along the stream",
  "Above basin's rim",
  [banks, bed, water, outline, full, running, ...supply, ...named],
  {
    alt: "The stream from the side, to scale: banks, bed and water with each fall's name and drop, the basin with its full and running water, and the pipe from the pump to the highest outlet.",
    ratio: profileRatio,
    lines: 19,
    summary: true,
  },
);

const { summary: _, ...shown } = profile;

/** What the customer sees of it: no pipe, no pump. */
export const profileForCustomer: ChartBlock = {
  ...shown,
  heading: "Your stream from the side, to scale",
  series: [
    ...[banks, { ...bed, label: "Stream bed" }, water, outline, running, ...named],
    {
      label: "Pools",
      x: "course.pool_said_along",
      y: "course.pool_said_up",
      marks: "names",
      says: "course.pool_said",
      at: "below",
    },
  ],
  alt: "The stream from the side, to scale: banks, bed and water with each fall's name and drop, its pools by name, and the hidden basin with its water.",
  without: ["across", "up"],
  lines: 13,
};

/** What the crew sees of it; along the course, its tape counts from the basin, in the table of points. */
export const profileForCrew: ChartBlock = { ...shown, without: ["across"], lines: 12 };

export const coursePoints: readonly Block[] = [lipsNumbered, course, courseEnds, points, pipe, basin];
