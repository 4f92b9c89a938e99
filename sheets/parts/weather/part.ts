import { part } from "../part.js";
import { placesTable, weatherUsed } from "./places.js";

export const weather = part("Weather", "Rain, storm and dry spell of the place that the job names.", {
  blocks: { Basin: [weatherUsed] },
  below: { "Water tables": [placesTable] },
});
