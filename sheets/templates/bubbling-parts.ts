import { balance } from "../parts/balance/part.js";
import { basin } from "../parts/basin/part.js";
import { berms } from "../parts/berms/part.js";
import { toStones } from "../parts/bubblers/line-ends.js";
import { bubblers } from "../parts/bubblers/part.js";
import { clarifier } from "../parts/clarifier/part.js";
import { earthworkOf } from "../parts/earthwork/part.js";
import { float } from "../parts/float/part.js";
import { job } from "../parts/job/part.js";
import { basinLiner } from "../parts/liner/part.js";
import { linesTo } from "../parts/lines/part.js";
import { main } from "../parts/main/part.js";
import type { Part } from "../parts/part.js";
import { pump } from "../parts/pump/part.js";
import { trench } from "../parts/trench/part.js";
import { weather } from "../parts/weather/part.js";
import { workParts } from "./work-parts.js";

/** What stones that bubble over a buried basin are made of: the parts of the waterfall, but for its water course. */
export const bubblingParts: readonly Part[] = [
  job,
  bubblers,
  linesTo(toStones),
  main,
  clarifier,
  balance,
  earthworkOf({ dug: "the basin", filled: "the basin" }),
  trench,
  berms,
  basin,
  weather,
  float,
  basinLiner,
  pump,
  ...workParts,
];
