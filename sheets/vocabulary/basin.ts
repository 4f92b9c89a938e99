import { area, count, formula, length, smallLength } from "../../engine/template/index.js";
import { waterVolume } from "./quantities.js";

const geometry = "geometry: layers of constant open area below and above the top of the crates";

const HELD_BELOW = formula(
  "HELD_BELOW",
  "Water held below a level of the basin",
  { level: length, top: length, lower_area: area, upper_area: area },
  waterVolume,
  "lower_area*MIN(level,top)+upper_area*MAX(level-top,0)",
  geometry,
);

const PLACES = formula(
  "PLACES",
  "How many whole sizes fit in a room; none where the size is not given",
  { room: length, size: length },
  count,
  "IF(size>0,INT(ROUND(room/size,6)),0)",
  "arithmetic",
);

const LEVEL_OF = formula(
  "LEVEL_OF",
  "Level at which a volume of water stands in the basin; 0 in one without a plan",
  { water: waterVolume, top: length, lower_area: area, upper_area: area },
  length,
  "IF(water<=0,0,IF(water<=lower_area*top,water/lower_area,IF(upper_area>0,top+(water-lower_area*top)/upper_area,0)))",
  geometry,
);

const PLACES_TAKEN = formula(
  "PLACES_TAKEN",
  "Places of a grid that a box takes up, turned the way that takes fewer; none without a grid",
  { long: smallLength, wide: smallLength, along: smallLength, across: smallLength },
  count,
  "IF(along*across>0,MIN(WHOLE_UP(long/along)*WHOLE_UP(wide/across),WHOLE_UP(wide/along)*WHOLE_UP(long/across)),0)",
  "geometry",
);

export const basinFormulas = [HELD_BELOW, LEVEL_OF, PLACES, PLACES_TAKEN] as const;
