import {
  calc,
  count,
  decide,
  hoursADay,
  length,
  lines,
  number,
  office,
  text,
  walk,
  yesno,
} from "../../../engine/template/index.js";
import { rate } from "../../vocabulary/rate.js";

/** One of several rates, by a word. */
const chosen = (name: string, prefix: string, words: readonly string[]): string =>
  words
    .slice(0, -1)
    .reduceRight(
      (otherwise, word) => `IF(${name}="${word}",${rate(`${prefix}-${word}`)},${otherwise})`,
      rate(`${prefix}-${words.at(-1)}`),
    );

const accesses = ["open", "narrow", "hand"];
const soils = ["soft", "common", "hard", "rock"];

/** What slows the work on this site, and the crew that does it. */
export const siteFactors = lines("Site and crew", {
  site_access: walk(text, "Access", {
    default: "open",
    choices: accesses,
    note: "open: machine and truck reach it; narrow: a small machine only; hand: carried and wheeled.",
  }),
  site_soil: walk(text, "Digging conditions", { default: "common", choices: soils }),
  site_haul: walk(length, "Haul distance on site", { default: 50, least: 0, most: 1000 }),
  access_factor: calc(number, chosen("site_access", "access", accesses), "Access time factor"),
  soil_factor: calc(number, chosen("site_soil", "soil", soils), "Soil time factor"),
  haul_factor: calc(number, `1+${rate("haul-per-hundred-feet")}/100*site_haul/100[ft]`, "Haul time factor"),
  crew_size: decide(count, "Crew size", { default: 3, least: 1, most: 12, whole: true }),
  shift_hours: office(hoursADay, "Hours of work a day", { default: 8, least: 4, most: 12 }),
  pay_whole_days: office(yesno, "Pay whole days", {
    default: true,
    note: "The crew is paid for the days of work to their end. Days lost to rain are not paid.",
  }),
});
