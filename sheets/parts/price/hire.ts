import { calc, days, hours, lines, office, yesno } from "../../../engine/template/index.js";

const whole = (of: string): string => `WHOLE_UP((${of})/1[days])*1[days]`;

/** How long the machines are on hire, which is longer than they work. */
export const hireDays = lines("Days of hire", {
  hire_in_rain: office(yesno, "Hire runs on in rain", { default: true }),
  machine_hire_days: calc(
    days,
    `machine_days+IF(hire_in_rain,${whole("days_lost*MIN(1,machine_days/MAX(work_days,1[days]))")},0[days])`,
    "Machine days on hire",
    { decimals: 0, note: "Its part of the days lost is its part of the days of work." },
  ),
  compacting_hours: calc(
    hours,
    `${["berm", "backfill", "wall-base"].map((code) => `SUM_WHERE(tasks.hours,tasks.machine_code,"${code}")`).join("+")}`,
    "Man-hours with a compactor",
    { note: "Berms, backfill and the bases of walls." },
  ),
  compactor_days: calc(
    days,
    `IF(compacting_hours>0,MAX(1[days],${whole("compacting_hours/MAX(crew_size,1)/MAX(shift_hours,1[h/day])")}),0[days])`,
    "Compactor days on hire",
    { decimals: 0, note: "As long as the crew fills and compacts." },
  ),
});
