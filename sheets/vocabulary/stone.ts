import { density, formula, length, percent, spaceVolume, tons, weight } from "../../engine/template/index.js";

const STONE_TONS = formula(
  "STONE_TONS",
  "Weight of a volume of stone with its voids",
  { volume: spaceVolume, voids: percent, solid_density: density },
  tons,
  "volume*(1-voids)*solid_density",
  "definition of porosity: the solid share is 1 - n",
);

const STONE_WEIGHT = formula(
  "STONE_WEIGHT",
  "Weight of one stone, from the box of its three sizes and the share of it that is stone",
  { long: length, wide: length, high: length, fullness: percent, solid_density: density },
  weight,
  "ROUND(long*wide*high*fullness*solid_density/1[lb],6)*1[lb]",
  "geometry: an ellipsoid fills pi/6 of its box, a block all of it; rounded, so that every program writes the same whole pound",
);

export const stoneFormulas = [STONE_TONS, STONE_WEIGHT] as const;
