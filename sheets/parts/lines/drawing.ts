import { type Block, calc, chart, count, head, lines, number, table, text } from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";
import type { LineEnds } from "../line-ends.js";
import { numberedRows, rowNumber } from "../numbered.js";

/** The lines in the order of their rows, one beside another; a row not in use repeats the one before it. */
const places = (ends: LineEnds) =>
  table(
    "manifold_lines",
    "Manifold, line by line",
    { ...numberedRows(capacity.lines, "line"), beside: "pipe_lines" },
    {
      line: rowNumber("Line"),
      used: calc(count, "IF(bore>0,1,0)", "In use"),
      place: calc(count, "above.place+used", "Place", { first: "used" }),
      top: calc(head, "IF(used>0,height,0[ft])", "Outlet height"),
      ...ends.drawn,
      valve: calc(head, "0.3*highest_outlet", "Valve in drawing"),
      setting: calc(
        text,
        'IF(shut,"shut",IF(valve_setting<2[°],"open",FIXED(valve_setting,0)&"° from open"))',
        "Setting",
      ),
      flow_said: calc(text, "~{actual_flow|0}", "Flow in words"),
      named: calc(text, 'IF(used>0,name&", "&pipe_size," ")', "Name and size"),
      named_up: calc(head, "IF(used>0,height,manifold_top)", "Name, up"),
      named_place: calc(count, "IF(used>0,place,manifold_far)", "Name, place"),
      said_up: calc(head, "IF(used>0,valve,manifold_top)", "Setting, up"),
      said_place: calc(number, "IF(used>0,place+0.01*manifold_far,manifold_far)", "Setting, place"),
      said: calc(text, 'IF(used>0,setting&", "&flow_said," ")', "Valve and flow"),
    },
  );

/** From the manifold up each line and down again. */
const risers = table(
  "manifold_points",
  "Manifold, lines drawn",
  { rows: 3 * capacity.lines },
  {
    place: calc(count, (row) => `INDEX(manifold_lines.place,${Math.ceil(row / 3)})`, "Place"),
    up: calc(head, (row) => (row % 3 === 2 ? `INDEX(manifold_lines.top,${Math.ceil(row / 3)})` : "0[ft]"), "Up"),
  },
);

const header = table(
  "manifold_header",
  "Manifold, main",
  { rows: 2 },
  {
    place: calc(count, (row) => (row === 1 ? "0" : "line_count"), "Place"),
    up: calc(head, "manifold_zero", "Up"),
  },
);

const names = lines("Manifold, names", {
  manifold_near: calc(count, "0", "Main in drawing"),
  manifold_name_up: calc(head, "0.08*manifold_top", "Name of main in drawing"),
  manifold_zero: calc(head, "0[ft]", "Manifold in drawing"),
  manifold_said: calc(text, "~Main {main_size}, {total_flow|0}", "Main in words"),
  manifold_far: calc(count, "line_count+1", "Drawing, far end"),
  manifold_top: calc(head, "1.25*MAX(manifold_lines.top)", "Drawing top"),
});

/** The manifold with each line's size, valve setting and flow. Distances along it mean nothing. */
export const manifold = chart(
  "Manifold and lines",
  "",
  "Outlet above running basin water",
  [
    { label: "Main and manifold", x: "manifold_header.place", y: "manifold_header.up", marks: "line", look: "heavy" },
    { label: "Lines", x: "manifold_points.place", y: "manifold_points.up", marks: "line", look: "plain" },
    {
      label: "Valves, with their setting and flow",
      x: "manifold_lines.place",
      y: "manifold_lines.valve",
      marks: "points",
    },
    {
      label: "Settings",
      x: "manifold_lines.said_place",
      y: "manifold_lines.said_up",
      marks: "names",
      says: "manifold_lines.said",
      at: "right",
    },
    {
      label: "Names",
      x: "manifold_lines.named_place",
      y: "manifold_lines.named_up",
      marks: "names",
      says: "manifold_lines.named",
      at: "above",
    },
    { label: "Main", x: "manifold_near", y: "manifold_name_up", marks: "names", says: "manifold_said", at: "right" },
    { label: "Scale", x: "manifold_far", y: "manifold_top", marks: "frame" },
  ],
  {
    alt: "The main and its lines, each as high as its outlet, with name and pipe size at its end, valve setting and flow at its valve.",
    without: ["across"],
    lines: 12,
  },
);

export const manifoldPoints = (ends: LineEnds): readonly Block[] => [places(ends), risers, header, names];
