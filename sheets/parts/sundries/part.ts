import { unprinted } from "../../../engine/template/index.js";
import { bullet, under } from "../../plan/page-line.js";
import { counted } from "../../vocabulary/counted.js";
import { hired } from "../hire.js";
import { part } from "../part.js";
import { sundries as sundriesBlock } from "./sundries.js";
import { usualNeeds } from "./usual-needs.js";

/** Small things, fees and hires that no sheet of its own asks for. */
export const sundries = part("Sundries", "What every job takes besides: boxes, drains, fabric, fees.", {
  section: "Materials",
  blocks: { Materials: [(all) => unprinted(sundriesBlock(all)), usualNeeds] },
  takeoff: [
    { what: "pipe primer, a can for each 50 joints", code: "primer", wanted: "pipe_joints/50", unit: "each" },
    {
      what: "unions and clamps at the pump, a set",
      code: "pump-fittings",
      wanted: "pump_sets",
      unit: "each",
      said: "pump_set_said",
    },
    { what: "valve boxes", code: "valve-box", wanted: "valve_boxes", unit: "each" },
    {
      what: "winter drain valve",
      code: "drain-valve",
      wanted: "winter_drains",
      unit: "each",
      said: '"for a main of "&main_size',
    },
    { what: "sealed splices of the lights", code: "splice-kit", wanted: "lights_wanted", unit: "each" },
    { what: "filter fabric around the crates", code: "fabric", wanted: "fabric_area", unit: "ft²", waste: 0.1 },
  ],
  crew: [
    bullet(
      "step: basin",
      "Filter fabric over top and sides of the crates, {fabric_area|0}, before the stone.",
      "fabric_area>0",
    ),
    bullet("step: main", "Winter drain valve at the lowest point of the main.", "winter_drain"),
    ...under(
      "Fit outlets and valves",
      bullet(
        "step: pipe",
        `The valves of the lines stand in {${counted("valve_boxes", "valve box", "valve boxes")}}, the lid at finished ground.`,
        "valve_boxes>0",
      ),
    ),
  ],
  // what lies under a lid is found again only by who is told where
  handOver: [
    bullet(
      "valves",
      '{IF(valve_boxes>1,"The "&FIXED(valve_boxes,0)&" valve boxes are","The valve box is")} at:\u00a0____________',
      "valve_boxes>0",
    ),
    bullet("fall", "The drain valve of the main is at:\u00a0____________ Open it with the pump off.", "winter_drain"),
  ],
  hires: [
    hired("Small-load charge", "small_loads", "small-load", "Charge for a load under its minimum", "$/each"),
    hired("Dump fees", "haul_loads", "dump-fee", "Dump fee of a load of soil", "$/load"),
    hired("Portable toilet", "toilets", "toilet", "Portable toilet, four weeks", "$/each"),
  ],
});
