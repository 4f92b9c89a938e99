import { sheet } from "../engine/template/index.js";
import { basinCautions } from "./basin/cautions.js";
import { crates } from "./basin/crates.js";
import { basinDays } from "./basin/days.js";
import { basinDig } from "./basin/dig.js";
import { evaporation } from "./basin/evaporation.js";
import { fillLine } from "./basin/fill-line.js";
import { fillFloat } from "./basin/float.js";
import { hole } from "./basin/hole.js";
import { basinMaterials } from "./basin/materials.js";
import { designRain } from "./basin/rain.js";
import { basinStone, voidTable } from "./basin/stone.js";
import { basinWater } from "./basin/water.js";

export const basinSheet = sheet(
  "Basin",
  "The buried basin: does it hold the water that the stream takes up, and the days between fills?",
  [
    basinWater,
    hole,
    crates,
    basinStone,
    ...evaporation,
    basinDays,
    designRain,
    basinDig,
    fillFloat,
    fillLine,
    basinMaterials,
    basinCautions,
    voidTable,
  ],
);
