import {
  density,
  formula,
  length,
  percent,
  spaceVolume,
  tons,
  weight,
} from "../../engine/template/index.js";

const STONE_TONS = formula(
  "STONE_TONS",
  "Weight of a volume of stone with its voids",
  { volume: spaceVolume, voids: percent, solid_density: density },
  tons,
  "volume * (1 - voids) * solid_density",
  "definition of porosity: the solid share is 1 - n",
);

const STONE_WEIGHT = formula(
  "STONE_WEIGHT",
  "Weight of one stone, taken as an ellipsoid of its three sizes",
  { long: length, wide: length, high: length, solid_density: density },
  weight,
  "PI() / 6 * long * wide * high * solid_density",
  "volume of an ellipsoid; 24 in every way is a sphere of 24 in",
);

export const stoneFormulas = [STONE_TONS, STONE_WEIGHT] as const;
