import { access } from "../parts/access/part.js";
import { book } from "../parts/book/part.js";
import { built } from "../parts/built/part.js";
import { diggingSafety } from "../parts/digging-safety/part.js";
import { electrical } from "../parts/electrical/part.js";
import { fillLine } from "../parts/fill-line/part.js";
import { labor } from "../parts/labor/part.js";
import { lifting } from "../parts/lifting/part.js";
import { lights } from "../parts/lights/part.js";
import { materials } from "../parts/materials/part.js";
import { papers } from "../parts/papers/part.js";
import type { Part } from "../parts/part.js";
import { planting } from "../parts/planting/part.js";
import { price } from "../parts/price/part.js";
import { schedule } from "../parts/schedule/part.js";
import { sundries } from "../parts/sundries/part.js";
import { trees } from "../parts/trees/part.js";
import { walls } from "../parts/walls/part.js";

/** The parts that every feature ends with: how it is lifted, dug, reached, powered, built, bought, priced and told. */
export const workParts: readonly Part[] = [
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
