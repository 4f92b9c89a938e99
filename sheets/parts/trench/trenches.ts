import {
  calc,
  check,
  decide,
  length,
  lines,
  office,
  percent,
  published,
  smallLength,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { soilVolume } from "../../vocabulary/quantities.js";
import type { Whole } from "../brought.js";
import type { Trench } from "../trenched.js";

const practice = "common practice, no source";
const ownList = "the list of trenches of this template";

/** Those of the pipes; what lies in a narrow one, dug by hand, brings its own. */
export const pipeTrenches: readonly Trench[] = [
  { trench: "main", kind: "pipe", pipe: "main_length", bedding: 4 },
  { trench: "lines", kind: "pipe", pipe: "SUM(pipe_lines.length)", bedding: 4 },
];

type Trenches = Pick<Whole, "trenches">;

/** Each line has a trench of its own, unless it is said to share one. */
export const trenchTable = ({ trenches }: Trenches) =>
  table(
    "trenches",
    "Trenches, in place",
    {
      rows: trenches.length,
      shown: "open_length>0[ft]",
      data: trenches.map(({ pipe: _, ...row }) => row),
      note: "Below frost where a line is not drained; the local code decides. Where two lines lie in one trench, set shared to yes at one of them, or it is dug twice.",
    },
    {
      trench: published(text, "Trench", { source: ownList }),
      kind: published(text, "Kind", { source: ownList }),
      pipe: calc(length, (row) => trenches[row - 1]?.pipe ?? "0[ft]", "Length of its line"),
      chosen: decide(length, "Override length", { optional: true, least: 0, most: 5000 }),
      shared: decide(yesno, "Dug by others, or shared", { default: false }),
      open_length: calc(length, "IF(ISBLANK(chosen),pipe,chosen)", "Open length", {
        note: "A trench that others dig is entered all the same.",
      }),
      dug: calc(length, "IF(shared,0[ft],open_length)", "Length dug"),
      width: decide(smallLength, "Override width", { optional: true, least: 2, most: 72 }),
      depth: decide(smallLength, "Override depth", { optional: true, least: 2, most: 144 }),
      wide: calc(smallLength, "IF(ISBLANK(width),trench_width,width)", "Width"),
      deep: calc(smallLength, "IF(ISBLANK(depth),trench_depth,depth)", "Depth"),
      open_depth: calc(smallLength, "IF(open_length>0[ft],deep,0[in])", "Open depth"),
      volume: calc(soilVolume, "dug*wide*deep", "Dig"),
      bedding: decide(smallLength, "Bedding under its line", {
        default: 0,
        least: 0,
        most: 24,
        source: practice,
      }),
      bed: calc(soilVolume, "dug*wide*bedding", "Bedding, as laid"),
      effort: calc(
        soilVolume,
        "volume*(1+deep_trench_growth*MAX(0[in],deep-plain_trench_depth)/1[ft])",
        "Dig, weighted by depth",
      ),
      holds_bedding: check(
        "OR(dug<=0,bedding<deep)",
        "Trench {trench}: its bedding of {bedding} fills its depth of {deep}. Enter less bedding in trenches on sheet Decisions.",
        { label: "Bedding fills trench" },
      ),
    },
  );

/** A column's sum over the trenches of one kind. */
const sumOf = (column: string, kind: Trench["kind"]) => `SUM_WHERE(trenches.${column},trenches.kind,"${kind}")`;

export const trenchLines = ({ cellsAt }: Pick<Whole, "cellsAt">) =>
  lines("Rules and totals of trenches", {
    trench_width: office(smallLength, "Width of the pipe trench", {
      default: 12,
      least: 4,
      most: 72,
      source: practice,
    }),
    trench_depth: office(smallLength, "Depth of the pipe trench", {
      default: 24,
      least: 4,
      most: 144,
      source: practice,
    }),
    plain_trench_depth: office(smallLength, "Depth limit, plain trench rate", {
      default: 36,
      least: 0,
      most: 144,
      source: "labor factors of a builders' academy: hand digging in trenches to 1 m, at one rate whatever the depth",
    }),
    deep_trench_growth: office(percent, "More time per ‹foot|0.305 m› deeper", {
      default: 0.1,
      least: 0,
      most: 1,
      decimals: 0,
      source: practice,
    }),
    main_depth: calc(
      length,
      'MAX(0[ft],PICK(trenches.deep,trenches.trench,"main")-PICK(trenches.bedding,trenches.trench,"main"))',
      "Main's bottom, below ground",
      { working: true },
    ),
    ...cellsAt("trench rules"),
    trench_length: calc(length, sumOf("dug", "pipe"), "Pipe trench", { strong: true }),
    trench_volume: calc(soilVolume, "SUM(trenches.volume)", "Trenches, in place", {
      strong: true,
    }),
    trench_effort: calc(soilVolume, sumOf("effort", "pipe"), "Pipe trench, weighted by depth", { working: true }),
    narrow_effort: calc(soilVolume, sumOf("effort", "narrow"), "Narrow trenches, weighted by depth", { working: true }),
    trench_bedding: calc(soilVolume, "SUM(trenches.bed)", "Trench bedding, as laid", { working: true }),
    trench_spare: calc(
      soilVolume,
      "trench_volume-MAX(0[yd³],trench_volume-trench_bedding-pipe_water)/compacted_factor",
      "Dirt left from trenches",
      {
        working: true,
        note: "What is filled in again is compacted; bedding and pipes take the place of the rest, the walls of the pipes left out. Below 0 soil is lacking.",
      },
    ),
  });

/** The trenches as the crew reads them. */
export const trenchWords = ({ trenches }: Trenches): TableBlock =>
  table(
    "trench_lines",
    "Trenches in words",
    { working: true, rows: trenches.length, beside: "trenches", filled: "dug>0" },
    {
      size: calc(text, "~Trench of {trench}: {dug}, {wide|0} wide, {deep|0|up} deep", "Size", {
        reader: "crew",
      }),
      sand: calc(text, "~, lowest {bedding} bedding", "Bedding", { reader: "crew" }),
      said: calc(text, 'size & IF(bedding > 0[in], sand, "") & "."', "For the crew"),
    },
  );
