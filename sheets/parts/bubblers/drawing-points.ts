import { type Block, type CalcDeclaration, calc, length, lines, table, text } from "../../../engine/template/index.js";
import { bubblersTable } from "./bubblers-table.js";

const { rows } = bubblersTable;

/** The rows of stones. */
export const stones = Array.from({ length: rows }, (_, i) => i + 1);

/** Width over height of the drawn area, to scale. */
export const elevationRatio = 1.7;

const of = (column: string, k: number) => `INDEX(bubblers.${column},${k})`;
const isUsed = (k: number) => `${of("used", k)}>0`;

/** A shape's corner, as shares of width and height, and water over its top. */
type Corner = readonly [across: number, up: number, over: number];

/** Rounded at its shoulders; in no job to its true shape. */
const outline: readonly Corner[] = [
  [-0.5, 0, 0],
  [-0.5, 0.85, 0],
  [-0.35, 1, 0],
  [0.35, 1, 0],
  [0.5, 0.85, 0],
  [0.5, 0, 0],
  [-0.5, 0, 0],
];

const film: readonly Corner[] = [
  [-0.6, 0, 0],
  [-0.6, 0.88, 0],
  [-0.38, 1.03, 0],
  [0, 1, 1],
  [0.38, 1.03, 0],
  [0.6, 0.88, 0],
  [0.6, 0, 0],
];

const box: readonly (readonly [number, number])[] = [
  [-0.5, -0.5],
  [-0.5, 0.5],
  [0.5, 0.5],
  [0.5, -0.5],
  [-0.5, -0.5],
];

const circlePoints = 16;
const circle: readonly (readonly [number, number])[] = Array.from({ length: circlePoints + 1 }, (_, i) => {
  const angle = (2 * Math.PI * i) / circlePoints;
  return [Number(Math.cos(angle).toFixed(4)), Number(Math.sin(angle).toFixed(4))];
});

/** A pair of columns for each stone. A stone that is not there is a point in the basin's corner. */
const pairs = (
  names: readonly [string, string],
  point: (k: number) => (row: number) => readonly [string, string],
): Record<string, CalcDeclaration> =>
  Object.fromEntries(
    stones.flatMap((k) =>
      names.map((name, which) => [
        `${name}_${k}`,
        calc(length, (row) => `IF(${isUsed(k)},${point(k)(row)[which]},0[ft])`, `Stone ${k}, ${name}`),
      ]),
    ),
  );

const shape = (corners: readonly Corner[]) => (k: number) => (row: number) => {
  const [across, up, over] = corners[row - 1] as Corner;
  return [
    `${of("middle", k)}+${across}*${of("wide", k)}`,
    `${of("raised", k)}+${up}*${of("tall", k)}+${over}*${of("over", k)}`,
  ] as const;
};

const fromAbove = (points: typeof box, along: string, across: string) => (k: number) => (row: number) => {
  const [x, y] = points[row - 1] as readonly [number, number];
  return [`${of("middle", k)}+${x}*${of(along, k)}`, `${of("aside", k)}+${y}*${of(across, k)}`] as const;
};

const sides = ["along", "up"] as const;

/** Each pier stands up from the basin's bottom; a row that has none stays where the one before ended. */
const pierPoints = table(
  "bubbler_piers",
  "Piers, drawn",
  { rows: 4 * rows },
  {
    along: calc(length, (row) => pier(row, "along"), "Along", { first: pier(1, "along", "0[ft]") }),
    up: calc(length, (row) => pier(row, "up"), "Up", { first: pier(1, "up", "-basin_depth") }),
  },
);

function pier(row: number, side: (typeof sides)[number], otherwise = `above.${side}`): string {
  const k = Math.ceil(row / 4);
  const corner = (row - 1) % 4;
  const foot = corner === 0 || corner === 3;
  const half = `${corner < 2 ? "-" : "+"}pier_side*MIN(2,${of("pier_count", k)})/2`;
  const at = side === "along" ? `${of("middle", k)}${half}` : foot ? "-basin_depth" : of("raised", k);
  return `IF(${of("pier_count", k)}>0,${at},${otherwise})`;
}

/** From the manifold, under the cobble, up through each stone and down again. */
const pipePoints = table(
  "bubbler_pipes",
  "Pipes, drawn",
  { rows: 3 * rows },
  {
    along: calc(length, (row) => pipe(row, "along"), "Along", { first: pipe(1, "along", "0[ft]") }),
    up: calc(length, (row) => pipe(row, "up"), "Up", { first: pipe(1, "up", "-crate_cover/2") }),
  },
);

function pipe(row: number, side: (typeof sides)[number], otherwise = `above.${side}`): string {
  const k = Math.ceil(row / 3);
  const top = `${of("raised", k)}+0.9*${of("tall", k)}`;
  const at = side === "along" ? of("middle", k) : row % 3 === 2 ? top : "-crate_cover/2";
  return `IF(${isUsed(k)},${at},${otherwise})`;
}

/** Over its stone, or over the name before where the two would lie on one another. */
const clearOf = (top: string): string => `IF(ABS(${top}-above.up)<names_apart,above.up+names_apart,${top})`;

const names = table(
  "bubbler_names",
  "Names of stones, drawn",
  { rows },
  {
    along: calc(length, (k) => `IF(${isUsed(k)},${of("middle", k)},elevation_far)`, "Along"),
    up: calc(length, (k) => `IF(${isUsed(k)},${clearOf(of("fall", k))},elevation_up)`, "Up", {
      first: `IF(${isUsed(1)},${of("fall", 1)},elevation_up)`,
    }),
    across: calc(length, (k) => `IF(${isUsed(k)},${of("aside", k)},plan_side)`, "Across"),
    along_plan: calc(length, (k) => `IF(${isUsed(k)},${of("middle", k)},plan_far)`, "Along, in plan"),
    said: calc(text, (k) => `IF(${isUsed(k)},${of("name", k)}&""," ")`, "Name"),
    number: calc(text, (k) => `IF(${isUsed(k)},"${k}"," ")`, "Row, in plan"),
  },
);

const hole = table(
  "bubbler_basin",
  "Basin under the stones, drawn",
  { rows: 6 },
  {
    along: calc(
      length,
      (row) =>
        ["elevation_near", "0[ft]", "0[ft]", "basin_length", "basin_length", "elevation_ground"][row - 1] ?? "0[ft]",
      "Along",
    ),
    up: calc(length, (row) => (row === 3 || row === 4 ? "-basin_depth" : "0[ft]"), "Up"),
    crates_along: calc(
      length,
      (row) => (row === 2 || row === 3 || row === 6 ? "crates_far" : "crate_gap"),
      "Crates, along",
    ),
    crates_up: calc(length, (row) => (row === 3 || row === 4 ? "crate_top-basin_depth" : "-basin_depth"), "Crates, up"),
    running: calc(length, "level_running-basin_depth", "Running"),
    running_along: calc(length, (row) => (row < 4 ? "0[ft]" : "basin_length"), "Running, along"),
    cobble_along: calc(length, (row) => (row < 4 ? "-cover_beyond" : "basin_length+cover_beyond"), "Cobble, along"),
    cobble: calc(length, "cover_depth", "Cobble"),
  },
);

const sizes = lines("Stones, sizes of drawings", {
  elevation_bottom: calc(length, "-1.25*basin_depth", "Drawing, bottom"),
  elevation_tall: calc(length, "1.4*MAX(bubblers.fall)-elevation_bottom", "Drawing, height needed"),
  elevation_near: calc(length, "-cover_beyond-0.1*basin_length", "Drawing, near end"),
  elevation_ground: calc(length, "basin_length-elevation_near", "Ground, far end"),
  elevation_wide: calc(
    length,
    `MAX(elevation_ground-elevation_near,${elevationRatio}*elevation_tall)`,
    "Drawing, width",
  ),
  elevation_far: calc(length, "elevation_near+elevation_wide", "Drawing, far end"),
  elevation_up: calc(length, `elevation_bottom+elevation_wide/${elevationRatio}`, "Drawing, top"),
  names_apart: calc(length, "0.1*(elevation_up-elevation_bottom)", "Names, apart"),
  basin_name_along: calc(length, "basin_length/2", "Name of basin, along"),
  basin_name_up: calc(length, "-basin_depth", "Name of basin, up"),
  basin_name: calc(text, "~Hidden basin, {basin_length} by {basin_width}, {basin_depth|up} deep", "Basin in words", {
    reader: "crew",
  }),
});

/** Where everything stands that the drawings of the stones show. */
export const bubblerPoints: readonly Block[] = [
  sizes,
  table("bubbler_shapes", "Stones, drawn", { rows: outline.length }, pairs(sides, shape(outline))),
  table("bubbler_films", "Water on stones, drawn", { rows: film.length }, pairs(sides, shape(film))),
  table(
    "bubbler_boxes",
    "Stones from above, drawn",
    { rows: box.length },
    pairs(["along", "across"], fromAbove(box, "wide", "deep")),
  ),
  table(
    "bubbler_circles",
    "Splash from above, drawn",
    { rows: circle.length },
    pairs(["along", "across"], fromAbove(circle, "splash", "splash")),
  ),
  pierPoints,
  pipePoints,
  names,
  hole,
];
