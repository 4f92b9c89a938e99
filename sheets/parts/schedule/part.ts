import { line } from "../../plan/page-line.js";
import { weatherFormulas } from "../../vocabulary/weather.js";
import { part } from "../part.js";
import { rainBlocks } from "./rain.js";

const start = 'We start {IF(LEN(start_words)>0,"","in ")}{start_said}.';

/** `1 working day`, `9 working days`. */
const workingDays = (name: string) => `{${name}|0|bare} working {IF(ROUND(${name}/1[days],0)=1,"day","days")}`;

export const schedule = part("Schedule", "Days to allow for rain.", {
  blocks: { Schedule: rainBlocks },
  formulas: weatherFormulas,
  crew: [
    line(
      "before",
      "{work_days|0} of work by the hours below, {days_allowed|0} with the usual rain, as the customer was told.",
      "rain_known",
    ),
    line(
      "before",
      'The machine is on hire {machine_hire_days|0}: the days that it works{IF(hire_in_rain,", and rain between them","")}.',
      "AND(rain_known,machine_hire_days>0[days])",
    ),
  ],
  proposal: [
    line(
      "time",
      `${start} The work takes about ${workingDays("work_days")}, and longer where rain stops it.`,
      "NOT(rain_known)",
    ),
    line(
      "time",
      `${start} With the usual rain in {start_month_said} the work takes ${workingDays("days_allowed")} on site (about {work_days|0|bare} without rain), or about {calendar_days|0|bare} calendar {IF(ROUND(calendar_days/1[days],0)=1,"day","days")}.`,
      "rain_known",
    ),
    line("time", "Changes are agreed in writing, with their price, before we do them."),
  ],
  office: ["rain_stops_work", "rain_confidence", "work_week"],
});
