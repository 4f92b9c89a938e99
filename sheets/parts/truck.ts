import { office, tons } from "../../engine/template/index.js";
import { hired } from "./hire.js";

/** What a truck of stone carries, for whichever part buys stone by the load. */
export const truckPayload = office(tons, "Truck payload", {
  default: 15,
  least: 0.25,
  most: 40,
  note: "What the local hauler may carry on these roads.",
  source: "common practice, no source",
});

/** The way of what comes by the load. */
export const stoneDelivered = hired(
  "Stone, gravel and sand delivered",
  "truck_loads",
  "stone-load",
  "Truck load of stone, gravel or sand delivered",
  "$/load",
);
