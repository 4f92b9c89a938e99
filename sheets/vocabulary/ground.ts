import { area, formula, length, number, percent } from "../../engine/template/index.js";
import { soilVolume } from "./quantities.js";

const PRISMOID = formula(
  "PRISMOID",
  "Volume between two rectangles of which the larger one is wider all round by the same slope",
  { long: length, wide: length, height: length, run: number },
  soilVolume,
  "height*(long*wide+run*height*(long+wide)+4/3*(run*height)^2)",
  "prismoidal formula h/6 (A1 + 4 Am + A2), multiplied out: exact for plane sides",
);

const BERM_SECTION = formula(
  "BERM_SECTION",
  "Cross-section of a berm: a trapezium",
  { height: length, top: length, run: number },
  area,
  "height*(top+run*height)",
  "geometry",
);

const FEATHERED_END = formula(
  "FEATHERED_END",
  "One end of a berm that runs out to nothing: a wedge under the top and a pyramid under the slopes",
  { height: length, top: length, run: number, end_run: number },
  soilVolume,
  "end_run*height*(top*height/2+run*height^2/3)",
  "prismoidal formula h/6 (A1 + 4 Am + 0) on a trapezium that shrinks with its height: exact",
);

const COMPACTED_FACTOR = formula(
  "COMPACTED_FACTOR",
  "Compacted volume of one bank volume, by the convention in use",
  { shrink: percent, fhwa: number },
  number,
  "IF(fhwa=1,1/(1+shrink),1-shrink)",
  "ordinary form 1 - s; FHWA Federal Lands Highway PDDM 9.4.C form 1/(1 + s)",
);

export const groundFormulas = [PRISMOID, BERM_SECTION, FEATHERED_END, COMPACTED_FACTOR] as const;
