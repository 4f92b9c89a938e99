import {
  type Block,
  type ChartBlock,
  calc,
  chart,
  length,
  lines,
  table,
  text,
} from "../../../engine/template/index.js";
import { planLines, planRatio } from "./drawing-sizes.js";
import { section } from "./section.js";

/** Vaults that the plan shows at most. */
const vaults = 4;

const walls = table(
  "plan_points",
  "Basin in plan, walls",
  { rows: 5 },
  {
    along: calc(length, (row) => (row === 2 || row === 3 ? "basin_length" : "0[ft]"), "Along"),
    across: calc(length, (row) => (row === 3 || row === 4 ? "basin_width" : "0[ft]"), "Across"),
  },
);

const lineCount = planLines + 1;

/** To and fro across the crates' columns, then along their rows from the far side back. */
const crates = table(
  "plan_crates",
  "Basin in plan, crates",
  {
    rows: 4 * lineCount,
    note: `Where there are more than ${planLines} columns or rows, each line stands for several.`,
  },
  {
    along: calc(
      length,
      (row) => {
        const line = Math.floor((row - 1) / 2);
        if (line < lineCount) return `crate_gap+MIN(drawn_columns,${line}*columns_per_line)*crate_along`;
        // the lines across end at the far corner, where those along begin
        return (row - line) % 2 === 1 ? "crates_far" : "crate_gap";
      },
      "Along",
    ),
    across: calc(
      length,
      (row) => {
        const line = Math.floor((row - 1) / 2);
        if (line < lineCount) return (row + line) % 2 === 1 ? "crate_gap" : "crates_side";
        return `crate_gap+MAX(0,drawn_rows-${line - lineCount}*rows_per_line)*crate_across`;
      },
      "Across",
    ),
  },
);

/** Round each vault, one beside another. */
const vaultCorners = table(
  "plan_vaults",
  "Basin in plan, vaults",
  { rows: 5 * vaults },
  {
    along: calc(length, (row) => ((row - 1) % 5 === 1 || (row - 1) % 5 === 2 ? "vault_far" : "vault_near"), "Along"),
    across: calc(
      length,
      (row) => {
        const corner = (row - 1) % 5;
        const before = Math.floor((row - 1) / 5) + (corner === 2 || corner === 3 ? 1 : 0);
        return `crate_gap+MIN(vaults_needed,${before})*vault_width`;
      },
      "Across",
    ),
  },
);

const names = lines("Basin in plan, names", {
  plan_crates_said: calc(
    text,
    'IF(crates_needed>0,FIXED(crates_needed,0)&" crates"&IF(crate_layers>1," in "&FIXED(crate_layers,0)&" layers","")," ")',
    "Crates in words",
  ),
  plan_stone_said: calc(text, "~{crate_gap|0|up} of stone, {far_gap|0} at far end", "Stone in words", {
    reader: "crew",
  }),
  plan_stone_along: calc(length, "crate_gap", "Name of the stone, along"),
  plan_stone_up: calc(length, "basin_width+plan_side/8", "Name of the stone, across"),
  plan_crates_up: calc(length, "MAX(vault_side,crates_side)/2+vault_side/4", "Name of crates, across"),
  plan_vaults_said: calc(
    text,
    'IF(vaults_needed>1,FIXED(vaults_needed,0)&" vaults",IF(vaults_needed=1,"Vault"," "))',
    "Vaults in words",
  ),
});

/** The basin from above, to scale. */
export const plan = chart(
  "Basin in plan",
  "Along the basin",
  "Across the basin",
  [
    { label: "Basin inside liner", x: "plan_points.along", y: "plan_points.across", marks: "line", look: "heavy" },
    { label: "Crates", x: "plan_crates.along", y: "plan_crates.across", marks: "line", look: "fine" },
    { label: "Vault", x: "plan_vaults.along", y: "plan_vaults.across", marks: "line", look: "broad" },
    { label: "Stone", x: "plan_stone_along", y: "plan_stone_up", marks: "names", says: "plan_stone_said", at: "right" },
    { label: "Crates", x: "basin_length", y: "plan_crates_up", marks: "names", says: "plan_crates_said", at: "right" },
    { label: "Vault", x: "basin_length", y: "vault_half", marks: "names", says: "plan_vaults_said", at: "right" },
    { label: "Scale", x: "plan_far", y: "plan_side", marks: "frame" },
  ],
  {
    alt: "The basin from above, to scale: its walls, the crates in columns and rows, and the pump vault among them.",
    ratio: planRatio,
    lines: 26,
  },
);

/** Drawings whose names stand in them need no legend, and are larger without. */
const bare = (drawing: ChartBlock): ChartBlock => ({
  ...drawing,
  series: drawing.series.map((one) => ({ ...one, legend: false as const })),
  lines: 11,
});

/** What the crew sees: beside the plan, the levels in section. */
export const planForCrew: ChartBlock = { ...bare(plan), beside: [bare(section)] };

export const planPoints: readonly Block[] = [walls, crates, vaultCorners, names];
