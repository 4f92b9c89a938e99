import { type ChartBlock, chart } from "../../../engine/template/index.js";
import { elevationRatio, stones } from "./drawing-points.js";

type Series = ChartBlock["series"][number];

/** A series for each stone, of which the first stands in the legend. */
const eachStone = (label: string, points: string, side: string, look: NonNullable<Series["look"]>): Series[] =>
  stones.map((k) => ({
    label,
    x: `${points}.along_${k}`,
    y: `${points}.${side}_${k}`,
    marks: "line",
    look,
    ...(k > 1 && { legend: false as const }),
  }));

/** The stones from the side, over their basin. */
export const elevation = chart(
  "Stones over their basin, from the side",
  "Along the basin",
  "Above basin's rim",
  [
    { label: "Ground and basin", x: "bubbler_basin.along", y: "bubbler_basin.up", marks: "line", look: "heavy" },
    { label: "Cobble", x: "bubbler_basin.cobble_along", y: "bubbler_basin.cobble", marks: "line", look: "dashed" },
    { label: "Crates", x: "bubbler_basin.crates_along", y: "bubbler_basin.crates_up", marks: "line", look: "fine" },
    { label: "Piers", x: "bubbler_piers.along", y: "bubbler_piers.up", marks: "line", look: "plain" },
    { label: "Pipes", x: "bubbler_pipes.along", y: "bubbler_pipes.up", marks: "line", look: "long dashes" },
    ...eachStone("Stones", "bubbler_shapes", "up", "heavy"),
    ...eachStone("Water", "bubbler_films", "up", "plain"),
    {
      label: "Running level",
      x: "bubbler_basin.running_along",
      y: "bubbler_basin.running",
      marks: "line",
      look: "dotted",
    },
    {
      label: "Names",
      x: "bubbler_names.along",
      y: "bubbler_names.up",
      marks: "names",
      says: "bubbler_names.said",
      at: "above",
    },
    { label: "Basin", x: "basin_name_along", y: "basin_name_up", marks: "names", says: "basin_name", at: "below" },
    { label: "Scale", x: "elevation_far", y: "elevation_up", marks: "frame" },
    { label: "Scale", x: "elevation_far", y: "elevation_bottom", marks: "frame" },
  ],
  {
    alt: "The stones from the side, to scale, over the basin with its crates and running water: each with its name, the water over it, its pipe from the manifold, and the piers of those that stand on piers. The shape of a stone is not its own.",
    ratio: elevationRatio,
    lines: 22,
    summary: true,
  },
);

const { summary: _, ...shown } = elevation;
const hidden = ["Crates", "Piers", "Pipes", "Running level"];

/** What the customer sees of it. */
export const elevationForCustomer: ChartBlock = {
  ...shown,
  heading: "Your stones from the side, to scale",
  series: elevation.series.filter(({ label }) => !hidden.includes(label)),
  alt: "The stones from the side, to scale, each with its name and the water over it, and the hidden basin below. The shape of a stone is not its own.",
  without: ["across", "up"],
  lines: 16,
};

/** The stones from above, with the ground that their drops reach. */
export const planOfStones = chart(
  "Stones and splash, from above",
  "Along the basin",
  "Across the basin",
  [
    { label: "Basin inside liner", x: "plan_points.along", y: "plan_points.across", marks: "line", look: "heavy" },
    { label: "Vault", x: "plan_vaults.along", y: "plan_vaults.across", marks: "line", look: "plain" },
    ...eachStone("Stones", "bubbler_boxes", "across", "heavy"),
    ...eachStone("Splash", "bubbler_circles", "across", "dotted"),
    {
      label: "Names",
      x: "bubbler_names.along_plan",
      y: "bubbler_names.across",
      marks: "names",
      says: "bubbler_names.number",
      at: "center",
    },
    { label: "Vault", x: "vault_middle", y: "vault_half", marks: "names", says: "plan_vaults_said", at: "center" },
    { label: "Scale", x: "plan_far", y: "plan_side", marks: "frame" },
  ],
  {
    alt: "The basin from above, to scale: the pump vault, each stone with the number of its row, and a circle as far as its drops and splash go.",
    ratio: 1.7,
    lines: 22,
  },
);

const bare = (drawing: Omit<ChartBlock, "summary">): ChartBlock => ({
  ...drawing,
  series: drawing.series.map((one) => ({ ...one, legend: false as const })),
});

/** What the crew sees: the stones from the side and, beside, from above. */
export const drawingsForCrew: ChartBlock = {
  ...bare({ ...shown, lines: 14, without: ["across"] }),
  beside: [{ ...bare(planOfStones), lines: 14 }],
};
