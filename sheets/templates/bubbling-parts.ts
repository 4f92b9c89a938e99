import { access } from "../parts/access/part.js";
import { balance } from "../parts/balance/part.js";
import { basin } from "../parts/basin/part.js";
import { berms } from "../parts/berms/part.js";
import { book } from "../parts/book/part.js";
import { toStones } from "../parts/bubblers/line-ends.js";
import { bubblers } from "../parts/bubblers/part.js";
import { built } from "../parts/built/part.js";
import { clarifier } from "../parts/clarifier/part.js";
import { diggingSafety } from "../parts/digging-safety/part.js";
import { earthworkOf } from "../parts/earthwork/part.js";
import { electrical } from "../parts/electrical/part.js";
import { fillLine } from "../parts/fill-line/part.js";
import { float } from "../parts/float/part.js";
import { job } from "../parts/job/part.js";
import { labor } from "../parts/labor/part.js";
import { lifting } from "../parts/lifting/part.js";
import { lights } from "../parts/lights/part.js";
import { basinLiner } from "../parts/liner/part.js";
import { linesTo } from "../parts/lines/part.js";
import { main } from "../parts/main/part.js";
import { materials } from "../parts/materials/part.js";
import { papers } from "../parts/papers/part.js";
import type { Part } from "../parts/part.js";
import { planting } from "../parts/planting/part.js";
import { price } from "../parts/price/part.js";
import { pump } from "../parts/pump/part.js";
import { schedule } from "../parts/schedule/part.js";
import { sundries } from "../parts/sundries/part.js";
import { trees } from "../parts/trees/part.js";
import { trench } from "../parts/trench/part.js";
import { walls } from "../parts/walls/part.js";
import { weather } from "../parts/weather/part.js";

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
