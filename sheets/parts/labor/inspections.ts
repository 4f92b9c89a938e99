import { calc, count, days, decide, hours, lines, office, percent, text } from "../../../engine/template/index.js";

const ours = "our competent person";

/** Open digs are inspected each day before work and after every rain: 29 CFR 1926.651(k). */
export const inspections = lines("Inspections of the digs", {
  inspections_by: decide(text, "Inspections by", {
    section: "Dig safety",
    default: ours,
    choices: [ours, "a hired competent person"],
    note: "One trained to see the hazards, and with the power to stop the work.",
  }),
  inspection_time: office(hours, "Time of one inspection", {
    default: 0.5,
    least: 0.1,
    most: 8,
    source: "common practice, no source",
  }),
  open_dig_hours: calc(hours, "SUMPRODUCT((tasks.open_dig=TRUE)*tasks.hours)", "Man-hours with a dig open", {
    working: true,
  }),
  open_dig_days: calc(
    days,
    "WHOLE_UP(open_dig_hours/MAX(crew_size,1)/hours_at_tasks/1[days])*1[days]",
    "Days with open digs",
    { working: true, decimals: 0 },
  ),
  rain_chance: calc(
    percent,
    "DAY_CHANCE(INDEX(rain_months.rain_used,first_month),INDEX(rain_months.length,first_month),1)",
    "Chance of rain",
    { working: true, note: "Any rain, whether or not it costs the day." },
  ),
  inspections_needed: calc(
    count,
    "WHOLE_UP(open_dig_days/1[days]*(1+rain_chance/(1-MIN(0.9,start_chance))))",
    "Inspections",
    {
      strong: true,
      note: "One before each day of work, and one more after each rain that is likely while the digs stand open, days lost included.",
      source: "29 CFR 1926.651(k): daily before work, after every rainstorm",
    },
  ),
  inspection_hours: calc(
    hours,
    `IF(inspections_by="${ours}",inspections_needed*inspection_time,0[h])`,
    "Man-hours of our inspections",
  ),
  inspections_hired: calc(count, `IF(inspections_by="${ours}",0,inspections_needed)`, "Inspections hired", {
    working: true,
  }),
});
