import { calc, days, lines, office, yesno } from "../../../engine/template/index.js";

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
  compactor_days: calc(
    days,
    `IF(OR(berm_volume>0,basin_backfill>0,pool_backfill>0,wall_base>0),MAX(1[days],${whole("machine_days/3")}),0[days])`,
    "Compactor days on hire",
    {
      decimals: 0,
      note: "A third of the machine's days, where there is a berm, backfill or a wall's base to compact: common practice, no source.",
    },
  ),
});
