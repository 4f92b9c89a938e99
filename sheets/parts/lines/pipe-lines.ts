import { count, formula, text } from "../../../engine/template/index.js";
import type { UsualLine } from "../goods.js";

/** Sizes of pipe that have lines of their own; a further line takes any other. */
export const branchSizes = ["1-1/4 in", "1-1/2 in", "2 in", "3 in", "4 in"];
export const mainSizes = ["2 in", "3 in", "4 in"];

const noneOf = (sizes: readonly string[]) => sizes.map((size) => `(size<>"${size}")`).join("*");
const listed = "the lines of pipe on sheet Materials";

/** 1 for a size of pipe that no line of materials buys. */
export const sizeFormulas = [
  formula(
    "LINE_SIZE_UNLISTED",
    "1 for a line's size that nothing buys",
    { size: text },
    count,
    noneOf(branchSizes),
    listed,
  ),
  formula(
    "MAIN_SIZE_UNLISTED",
    "1 for a main's size that nothing buys",
    { size: text },
    count,
    noneOf(mainSizes),
    listed,
  ),
] as const;

/** A line that is shut is laid all the same. */
const linesOf = (size: string) => `COUNT_WHERE(pipe_lines.pipe_size,"${size}")`;
const inLines = (column: string, size: string) => `SUM_WHERE(pipe_lines.${column},pipe_lines.pipe_size,"${size}")`;
const onMain = (size: string, quantity: string) => `IF(main_size="${size}",${quantity},0)`;
/** `pipe-1-1-2` for 1-1/2 in. */
const code = (kind: string, size: string) => `${kind}-${size.replace(" in", "").replace("/", "-")}`;

type Sized = (size: string) => Pick<UsualLine, "what" | "wanted" | "unit"> & { kind: string };

const pipe: Sized = (size) => ({
  kind: "pipe",
  what: `pipe ${size}`,
  wanted: `${inLines("length", size)}+${onMain(size, "main_length")}`,
  unit: "ft",
});

const valve: Sized = (size) => ({
  kind: "ball-valve",
  what: `ball valves ${size}`,
  wanted: `${linesOf(size)}+${onMain(size, "main_valves")}`,
  unit: "each",
});

const elbow =
  (degrees: 90 | 45): Sized =>
  (size) => ({
    kind: `elbow-${degrees}`,
    what: `elbows ${degrees}°, ${size}`,
    wanted: `${inLines(`elbows_${degrees}`, size)}+${onMain(size, `main_elbows_${degrees}`)}`,
    unit: "each",
  });

const tee: Sized = (size) => ({
  kind: "tee",
  what: `tees ${size}`,
  wanted: onMain(size, "manifold_tees+main_tees"),
  unit: "each",
});

const cap: Sized = (size) => ({
  kind: "cap",
  what: `caps ${size}`,
  wanted: onMain(size, "manifold_caps"),
  unit: "each",
});

const bulkhead: Sized = (size) => ({
  kind: "bulkhead",
  what: `bulkhead fittings ${size}`,
  wanted: onMain(size, "1"),
  unit: "each",
});

const checkValve: Sized = (size) => ({
  kind: "check-valve",
  what: `check valves ${size}`,
  wanted: `SUMPRODUCT((pipe_lines.pipe_size="${size}")*(pipe_lines.siphon_stop="check valve"))+${onMain(size, "IF(check_valve_fitted,1,0)")}`,
  unit: "each",
});

const flexible: Sized = (size) => ({
  kind: "flex-pipe",
  what: `flexible pipe ${size} at the pump`,
  wanted: onMain(size, "flexible_length"),
  unit: "ft",
});

const forSizes = (sizes: readonly string[], line: Sized): UsualLine[] =>
  sizes.map((size) => {
    const { kind, ...rest } = line(size);
    return { ...rest, code: code(kind, size), waste: kind === "pipe" ? 0.08 : 0 };
  });

/** Pipe and fittings, by size: main and lines together. */
export const pipeLines: readonly UsualLine[] = [
  ...forSizes(branchSizes, pipe),
  ...forSizes(branchSizes, elbow(90)),
  ...forSizes(branchSizes, elbow(45)),
  ...forSizes(branchSizes, valve),
  ...forSizes(mainSizes, tee),
  ...forSizes(mainSizes, cap),
  ...forSizes(mainSizes, bulkhead),
  ...forSizes(branchSizes, checkValve),
  ...forSizes(mainSizes, flexible),
];
