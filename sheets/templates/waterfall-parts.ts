import { access } from "../parts/access/part.js";
import { balance } from "../parts/balance/part.js";
import { basin } from "../parts/basin/part.js";
import { berms } from "../parts/berms/part.js";
import { book } from "../parts/book/part.js";
import { built } from "../parts/built/part.js";
import { clarifier } from "../parts/clarifier/part.js";
import { diggingSafety } from "../parts/digging-safety/part.js";
import { earthwork } from "../parts/earthwork/part.js";
import { electrical } from "../parts/electrical/part.js";
import { falls } from "../parts/falls/part.js";
import { fillLine } from "../parts/fill-line/part.js";
import { float } from "../parts/float/part.js";
import { job } from "../parts/job/part.js";
import { labor } from "../parts/labor/part.js";
import { lifting } from "../parts/lifting/part.js";
import { lights } from "../parts/lights/part.js";
import { liner } from "../parts/liner/part.js";
import { lines } from "../parts/lines/part.js";
import { main } from "../parts/main/part.js";
import { materials } from "../parts/materials/part.js";
import { papers } from "../parts/papers/part.js";
import type { Part } from "../parts/part.js";
import { planting } from "../parts/planting/part.js";
import { pots } from "../parts/pots/part.js";
import { price } from "../parts/price/part.js";
import { pump } from "../parts/pump/part.js";
import { schedule } from "../parts/schedule/part.js";
import { stone } from "../parts/stone/part.js";
import { stream } from "../parts/stream/part.js";
import { streamDig } from "../parts/stream-dig/part.js";
import { sundries } from "../parts/sundries/part.js";
import { trees } from "../parts/trees/part.js";
import { trench } from "../parts/trench/part.js";
import { walls } from "../parts/walls/part.js";
import { weather } from "../parts/weather/part.js";

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
  lifting,
  diggingSafety,
  trees,
  walls,
  access,
  planting,
  fillLine,
  electrical,
  lights,
  labor,
  schedule,
  materials,
  sundries,
  price,
  papers,
  book,
  built,
];
