import {
  area,
  calc,
  decide,
  lines,
  number,
  percent,
  published,
  spaceVolume,
  table,
  text,
} from "../../../engine/template/index.js";
import { voids } from "../../tables/voids.js";
import { minus } from "../added.js";
import type { Whole } from "../brought.js";

export const voidTable = table(
  "voids",
  "Stone fill porosity (published)",
  { working: true, rows: voids.length, data: voids },
  {
    name: published(text, "Stone", { source: "see the last column" }),
    porosity: published(percent, "Porosity", { source: "see the last column" }),
    origin: published(text, "Source", { source: "as given" }),
  },
);

/** Stone around and over the crates, and the open area that crates, vault and stone leave. */
export const basinStone = ({ added }: Pick<Whole, "added">) =>
  lines("Stone fill and open space", {
    basin_stone_kind: decide(text, "Stone in the basin", {
      default: voids[0].name,
      choices: "voids.name",
    }),
    override_porosity: decide(percent, "Override porosity", {
      optional: true,
      least: 0.1,
      most: 0.6,
      note: "Open share of the whole volume. A void ratio of 0.67 is a porosity of 40%.",
    }),
    stone_porosity: calc(
      percent,
      "IF(ISBLANK(override_porosity),IF(ISBLANK(basin_stone_kind),0,PICK(voids.porosity,voids.name,basin_stone_kind)),override_porosity)",
      "Porosity used",
    ),
    stone_void_ratio: calc(number, "stone_porosity/(1-stone_porosity)", "Void ratio used", { working: true }),
    lower_water_area: calc(
      area,
      `crate_plan*crate_voids+vault_plan+MAX(0,basin_plan-crate_plan-vault_plan${minus(added("solid"))})*stone_porosity`,
      "Open area, crate layers",
      { working: true, decimals: 1 },
    ),
    upper_water_area: calc(
      area,
      `vault_plan+MAX(0,basin_plan-vault_plan${minus(added("solid"))})*stone_porosity`,
      "Open area over crates",
      {
        working: true,
        decimals: 1,
        note: "Vaults are taken to stand up to the rim.",
      },
    ),
    basin_stone_volume: calc(
      spaceVolume,
      `MAX(0,basin_plan-vault_plan${minus(added("solid"))})*basin_depth-crate_plan*crate_top`,
      "Stone fill volume",
    ),
  });
