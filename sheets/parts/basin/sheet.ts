import { sheet } from "../../../engine/template/index.js";
import { fillLine } from "../fill-line/fill-line.js";
import { fillFloat } from "../float/float.js";
import { basinCautions } from "./cautions.js";
import { crates } from "./crates.js";
import { basinDays } from "./days.js";
import { basinDig } from "./dig.js";
import { evaporation } from "./evaporation.js";
import { hole } from "./hole.js";
import { basinMaterials } from "./materials.js";
import { designRain } from "./rain.js";
import { basinStone, voidTable } from "./stone.js";
import { basinWater } from "./water.js";

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
