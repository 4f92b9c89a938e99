import { balance } from "../parts/balance/part.js";
import { basin } from "../parts/basin/part.js";
import { berms } from "../parts/berms/part.js";
import { clarifier } from "../parts/clarifier/part.js";
import { earthwork } from "../parts/earthwork/part.js";
import { falls } from "../parts/falls/part.js";
import { float } from "../parts/float/part.js";
import { job } from "../parts/job/part.js";
import { liner } from "../parts/liner/part.js";
import { lines } from "../parts/lines/part.js";
import { main } from "../parts/main/part.js";
import type { Part } from "../parts/part.js";
import { pots } from "../parts/pots/part.js";
import { pump } from "../parts/pump/part.js";
import { stone } from "../parts/stone/part.js";
import { stream } from "../parts/stream/part.js";
import { streamDig } from "../parts/stream-dig/part.js";
import { trench } from "../parts/trench/part.js";
import { weather } from "../parts/weather/part.js";
import { workParts } from "./work-parts.js";

/**
 * What a disappearing waterfall is made of. On a worksheet, in a stage of the work and in a section of
 * a page, parts stand in this order.
 */
export const waterfallParts: readonly Part[] = [
  job,
  falls,
  pots,
  stream,
  lines,
  main,
  clarifier,
  balance,
  earthwork,
  trench,
  streamDig,
  berms,
  basin,
  weather,
  float,
  liner,
  pump,
  stone,
  ...workParts,
];
