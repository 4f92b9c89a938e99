import {
  calc,
  count,
  decide,
  hours,
  hoursADay,
  lines,
  number,
  office,
  percent,
  text,
  yesno,
} from "../../../engine/template/index.js";

import { practice } from "../rates.js";

const bySoil = "by the soil";

/** How hard the ground is to dig: its rates are `soil-` and `soil-hand-` with these words. */
export const soilGrades = ["soft", "common", "hard", "rock"] as const;

/** What slows the work on this site, and the crew that does it. */
export const siteFactors = lines("Site and crew", {
  site_soil: decide(text, "Digging conditions", {
    section: "Earthwork",
    default: bySoil,
    choices: [bySoil, ...soilGrades],
    note: "By the soil: sand soft, common earth common, clay hard, blasted rock rock.",
  }),
  soil_grade: calc(
    text,
    `IF(site_soil="${bySoil}",IF(ISBLANK(soil_kind),"",PICK(soils.digging,soils.name,soil_kind)),site_soil)`,
    "Ground to dig",
    { working: true },
  ),
  soil_factor: calc(
    number,
    'IF(LEN(soil_grade)>0,PICK(used_rates.value,used_rates.code,IF(by_hand,"soil-hand-","soil-")&soil_grade),1)',
    "Soil time factor",
  ),
  crew_size: decide(count, "Crew size", { again: true, default: 3, least: 1, most: 12, whole: true }),
  shift_hours: office(hoursADay, "Hours of work a day", { default: 8, least: 4, most: 12 }),
  daily_set_up: office(hoursADay, "Daily set-up and clean-up", {
    default: 0.5,
    least: 0,
    most: 4,
    note: "Of each person, each day: tools out and away, site made safe.",
    source: practice,
  }),
  travel_time: decide(hoursADay, "Paid travel a day", {
    section: "Labor",
    default: 0.5,
    least: 0,
    most: 6,
    note: "Of each person, both ways, from the yard to the site.",
  }),
  overtime_after_day: office(hoursADay, "Overtime after, a day", {
    default: 8,
    least: 1,
    most: 24,
    source: "state law where it counts the day (California: 8 h); 24 where it does not",
  }),
  overtime_after_week: office(hours, "Overtime after, a week", {
    default: 40,
    least: 1,
    most: 100,
    source: "29 USC 207",
  }),
  overtime_premium: office(percent, "Overtime premium", {
    default: 0.5,
    least: 0,
    most: 2,
    decimals: 0,
    source: "29 USC 207: one and a half times the regular rate",
  }),
  pay_whole_days: office(yesno, "Pay whole days", {
    default: true,
    note: "The crew is paid for the days of work to their end. Days lost to rain are not paid.",
  }),
});
