import {
  calc,
  energyRate,
  hoursADay,
  input,
  lines,
  number,
  prose,
  sheet,
  text,
} from "../../engine/template/index.js";

/** What the water sheets read of the sheet Job. */
export const runningSheet = sheet("Job", "How it will be run.", [
  lines("Operation", {
    hours_a_day: input(hoursADay, "Hours the water runs each day", { default: 12 }),
    months_a_year: input(number, "Months the water runs each year", { default: 8 }),
    energy_rate: input(energyRate, "Price of electricity", { default: 0.16 }),
  }),
  prose("In place of the pages handed out", {
    looks_said: calc(text, 'TEXTJOIN("; ",TRUE,looks.said)', "Looks in words"),
    bases_said: calc(text, 'TEXTJOIN("; ",TRUE,pots.base)', "Bases of the pots"),
  }),
]);
