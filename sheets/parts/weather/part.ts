import { unprinted } from "../../../engine/template/index.js";
import { part } from "../part.js";
import { placesTable, weatherUsed } from "./places.js";

export const weather = part("Weather", "Rain, storm and dry spell of the place that the job names.", {
  below: { Basin: [unprinted(weatherUsed)], "Water tables": [placesTable] },
});
