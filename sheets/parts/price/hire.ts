import { calc, days, hours, lines, office, yesno } from "../../../engine/template/index.js";
import type { machineMethods } from "../../tables/work-methods.js";
import { type Hire, hired } from "../hire.js";

const whole = (of: string): string => `WHOLE_UP((${of})/1[days])*1[days]`;

/** How long the machines are on hire, which is longer than they work. */
export const hireDays = lines("Days of hire", {
  hire_in_rain: office(yesno, "Hire runs on in rain", { default: true }),
  machine_hire_days: calc(
    days,
    `machine_days+IF(hire_in_rain,${whole("days_lost*MIN(1,machine_days/MAX(work_days,1[days]))")},0[days])`,
    "Machine days on hire",
    { working: true, decimals: 0, note: "Its part of the days lost is its part of the days of work." },
  ),
  compacting_hours: calc(hours, "SUMPRODUCT(tasks.hours,COMPACTS(tasks.machine_code))", "Man-hours with a compactor", {
    working: true,
    note: "Berms, backfill and the bases of walls.",
  }),
  compactor_days: calc(
    days,
    `IF(compacting_hours>0,MAX(1[days],${whole("compacting_hours/MAX(crew_size,1)/hours_at_tasks")}),0[days])`,
    "Compactor days on hire",
    { working: true, decimals: 0, note: "As long as the crew fills and compacts." },
  ),
});

/** The machine that comes in is hired, for its days and its way; by hand, none is. `aDay` is what a new book opens with. */
export function machineHired(
  method: (typeof machineMethods)[number],
  what: string,
  code: string,
  aDay?: number,
): Hire[] {
  const when = (quantity: string) => `IF(work_method="${method}",${quantity},0)`;
  return [
    hired(`${what} on hire`, when("machine_hire_days/1[days]"), `${code}-day`, `${what}, with fuel`, "$/day", aDay),
    hired(
      `${what} brought and fetched`,
      when("IF(machine_days>0,1,0)"),
      `${code}-delivery`,
      `${what} brought and fetched`,
      "$/each",
    ),
  ];
}
