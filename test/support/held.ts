import { type Point, standStillAt } from "./stopping.js";

// The first import of a program that `started` starts: holds it where it was told to.
const { HOLD_AT, HOLD_TIME } = process.env;
if (HOLD_AT !== undefined) standStillAt(HOLD_AT as Point, Number(HOLD_TIME));
