import {
  type Block,
  calc,
  check,
  count,
  days,
  lines,
  number,
  office,
  percent,
  published,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { monthColumns } from "../../tables/month-columns.js";
import { monthsOfRain } from "../../tables/months.js";

/** By how many days more the search goes, each half of the one before: to any number below twice the first. */
const halves = [64, 32, 16, 8, 4, 2, 1];
const mostDaysLost = halves.reduce((sum, more) => sum + more, 0) - 1;
const afterFirst = 15;

/** The place's days of a month, unless the job has its own. */
const rainUsed = (row: number) =>
  `IF(AND(place_at>0,rain_days=rain_days_in_book),INDEX(places.rain_${monthColumns[row - 1]},MAX(place_at,1)),rain_days)`;

const monthTable = table(
  "rain_months",
  "Rain days of each month",
  {
    rows: 12,
    data: monthsOfRain,
    note: "Replace the 10 days by the 30-year means of the nearest weather station: days with ‹0.01 in|0.25 mm› of rain or more.",
  },
  {
    name: published(text, "Month", { source: "calendar" }),
    length: published(days, "Days", { source: "calendar; February with leap years", decimals: 2 }),
    rain_days: office(days, "Days with rain", { again: true, least: 0, most: 28 }),
    rain_used: calc(days, rainUsed, "Days with rain, used"),
    chance: calc(percent, "DAY_CHANCE(rain_used,length,rain_stops_work)", "Chance of a lost day"),
  },
);

/** Days lost found so far, and more where the day before those is not sure enough. */
const further = (lost: string) =>
  `${lost}+IF(WAIT_CHANCE(${lost}+more-1,MAX(work_days/1[days],1),day_lost)<rain_confidence,more,0)`;

/** The least whole count of days lost with a chance large enough that no more are lost: halving, so that it is exact. */
const search = table(
  "rain_search",
  "Days lost, found by halving",
  { working: true, rows: halves.length, data: halves.map((more) => ({ more })) },
  {
    more: published(count, "Days more", { source: "halving" }),
    lost: calc(count, further("above.lost"), "Days lost", { first: further("0") }),
  },
);

export const rainBlocks: readonly Block[] = [
  lines("Days to allow", {
    rain_stops_work: office(percent, "Rain days that stop work", {
      default: 0.5,
      least: 0,
      most: 1,
      decimals: 0,
      note: "A day counts as lost when half of it or more cannot be worked. Common practice, no source.",
    }),
    rain_confidence: office(percent, "Confidence in days allowed", {
      default: 0.8,
      least: 0.5,
      most: 0.99,
      decimals: 0,
    }),
    work_week: office(count, "Work days a week", { default: 5, least: 1, most: 7, whole: true }),
    rain_is_local: office(yesno, "Rain days are local", { default: false }),
    rain_known: calc(yesno, "IF(place_at>0,place_looked_up,rain_is_local)", "Rain days are of place", {
      working: true,
    }),
    weather_of_place: check(
      "AND(weather_known,storm_known,rain_known)",
      "Weather, design storm or rain days are placeholders. Name a looked-up place of the office book as weather_place on sheet Walk.",
      { label: "Weather not of the place", level: "look" },
    ),
    first_month: calc(count, "MAX(1,MIN(12,INT(start_month)))", "Starting month", { working: true }),
    start_chance: calc(percent, "INDEX(rain_months.chance,first_month)", "Chance of a lost day", { working: true }),
    next_chance: calc(percent, "INDEX(rain_months.chance,MOD(first_month,12)+1)", "Chance the month after", {
      working: true,
    }),
    day_lost: calc(
      percent,
      `MIN(0.95,IF(work_days>${afterFirst}[days],MAX(start_chance,next_chance),start_chance))`,
      "Chance used",
      { note: `The wetter of the two months where the work takes over ${afterFirst} days.` },
    ),
    rain_met: calc(number, "BINOMIAL_MEAN(work_days/1[days],day_lost)", "Mean rain days at work", {
      working: true,
      decimals: 1,
    }),
    rain_mean: calc(number, "WAIT_MEAN(work_days/1[days],day_lost)", "Mean days lost", { working: true, decimals: 1 }),
    rain_deviation: calc(number, "WAIT_DEVIATION(work_days/1[days],day_lost)", "Standard deviation of days lost", {
      working: true,
      decimals: 1,
    }),
    days_lost: calc(days, `IF(work_days>0,INDEX(rain_search.lost,${halves.length}),0)*1[days]`, "Days lost to allow", {
      decimals: 0,
    }),
    days_allowed: calc(days, "work_days+days_lost", "Days allowed", {
      strong: true,
      decimals: 0,
    }),
    calendar_days: calc(days, "WHOLE_UP(days_allowed/1[days]*7/MAX(work_week,1))*1[days]", "Calendar days", {
      decimals: 0,
    }),
    rain_table_covers: check(
      `INDEX(rain_search.lost,${halves.length})<=${mostDaysLost}`,
      `Over ${mostDaysLost} days would be lost, more than the table holds. Start in a drier month: enter start_month on sheet Decisions.`,
      { label: "Days lost beyond the table" },
    ),
  }),
  monthTable,
  search,
];
