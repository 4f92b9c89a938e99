import {
  area,
  calc,
  count,
  days,
  decide,
  lines,
  office,
  percent,
  text,
  yesno,
} from "../../../engine/template/index.js";
import type { Whole } from "../brought.js";
import { practice } from "../rates.js";

/** What every job takes besides its great pieces. */
export const sundries = ({ words }: Pick<Whole, "words">) =>
  lines("Sundries", {
    pump_sets: calc(count, "IF(pump_row>0,1,0)", "Sets of unions and clamps", {
      note: "At the pump, so that it comes out without a saw: common practice, no source.",
    }),
    pump_set_said: calc(
      text,
      'IF(pump_row>0,"pump outlet "&INDEX(pumps.outlet_size,MAX(1,pump_row))&", pipe "&main_size,"")',
      "Unions, as ordered",
      { working: true },
    ),
    valve_boxes: decide(count, "Valve boxes", {
      section: words.lines,
      default: 1,
      least: 0,
      most: 8,
      whole: true,
      note: "0 where the valves stand in the open or in the vault.",
    }),
    winter_drain: decide(yesno, "Winter drain valve", {
      section: "Main pipe",
      default: true,
      note: "At the low point of the main; no where it never freezes.",
    }),
    winter_drains: calc(count, "IF(winter_drain,1,0)", "Drain valves"),
    fabric_area: calc(
      area,
      "IF(crates_needed>0,crate_plan+2*(crate_columns*crate_along+crate_rows*crate_across)*crate_top,0[ft²])",
      "Filter fabric around crates",
      { note: "Top and four sides, so that gravel stays out." },
    ),
    small_load_share: office(percent, "Small load, under share", {
      default: 0.5,
      least: 0,
      most: 1,
      decimals: 0,
      source: practice,
      note: "Of a truck: a last load under it is charged for.",
    }),
    small_loads: calc(
      count,
      "IF(AND(classes_share_trucks,truck_loads>0,loads_in_parts-truck_loads+1<small_load_share),1,0)",
      "Small loads charged",
      { note: "Where bulk materials share trucks." },
    ),
    loads_in_parts: calc(count, "weight_loads+volume_loads+own_weight_loads+own_volume_loads", "Loads, in parts", {
      decimals: 2,
    }),
    toilet_from: office(days, "Toilet from days on site", {
      default: 5,
      least: 1,
      most: 100,
      source:
        "29 CFR 1926.51(c): toilets at the site, not for mobile crews with transport to one nearby; the days are practice",
    }),
    toilets: calc(
      count,
      "IF(days_allowed>=toilet_from,WHOLE_UP(calendar_days/28[days]),0)",
      "Toilet, rents of four weeks",
    ),
  });
