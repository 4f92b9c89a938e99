import {
  area,
  density,
  formula,
  length,
  percent,
  spaceVolume,
  text,
  tons,
  weight,
} from "../../engine/template/index.js";

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
  "long*wide*high*fullness*solid_density",
  "geometry: an ellipsoid fills pi/6 of its box, a block all of it",
);

const covering = "what a class of stone covers: a course has its own width and thickness, a face its own thickness";

const COURSE_LENGTH = formula(
  "COURSE_LENGTH",
  "Length of the course of a class of stone; 0 for one that is no course",
  { covers: text, lips: length, stream: length, own: length },
  length,
  'IF(covers="lips",lips,IF(covers="banks",2*stream,IF(covers="own size",own,0)))',
  covering,
);

const FACE_AREA = formula(
  "FACE_AREA",
  "Area that a class of stone faces; 0 for one that faces none",
  { covers: text, falls: area, basin: area },
  area,
  'IF(covers="fall faces",falls,IF(covers="basin top",basin,0))',
  covering,
);

const STONE_FILL = formula(
  "STONE_FILL",
  "Volume of a class of stone that fills a bed or the basin; 0 for one that does not",
  { covers: text, bed: spaceVolume, basin: spaceVolume },
  spaceVolume,
  'IF(covers="stream bed",bed,IF(covers="basin fill",basin,0))',
  covering,
);

export const stoneFormulas = [STONE_TONS, STONE_WEIGHT, COURSE_LENGTH, FACE_AREA, STONE_FILL] as const;
