import {
  calc,
  count,
  decide,
  hoursADay,
  lines,
  number,
  office,
  text,
  walk,
  yesno,
} from "../../../engine/template/index.js";

const bySoil = "by the soil";

/** How hard the ground is to dig: its rates are `soil-` and `soil-hand-` with these words. */
export const soilGrades = ["soft", "common", "hard", "rock"] as const;

/** What slows the work on this site, and the crew that does it. */
export const siteFactors = lines("Site and crew", {
  site_soil: walk(text, "Digging conditions", {
    section: "Soil",
    default: bySoil,
    choices: [bySoil, ...soilGrades],
    note: "By the soil: sand soft, common earth common, clay hard, blasted rock rock.",
  }),
  soil_grade: calc(
    text,
    `IF(site_soil="${bySoil}",PICK(soils.digging,soils.name,soil_kind),site_soil)`,
    "Ground to dig",
  ),
  soil_factor: calc(
    number,
    'PICK(used_rates.value,used_rates.code,IF(by_hand,"soil-hand-","soil-")&soil_grade)',
    "Soil time factor",
  ),
  crew_size: decide(count, "Crew size", { again: true, default: 3, least: 1, most: 12, whole: true }),
  shift_hours: office(hoursADay, "Hours of work a day", { default: 8, least: 4, most: 12 }),
  pay_whole_days: office(yesno, "Pay whole days", {
    default: true,
    note: "The crew is paid for the days of work to their end. Days lost to rain are not paid.",
  }),
});
