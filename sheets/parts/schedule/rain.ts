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

const mostDaysLost = 80;
const afterFirst = 15;

/** The place's days of a month, unless the job has its own. */
const rainUsed = (row: number) =>
  `IF(AND(place_at>0,LEN(override)=0),INDEX(places.rain_${monthColumns[row - 1]},MAX(place_at,1)),rain_days)`;

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

/** Whole counts of days lost, each with the chance that no more are lost. */
const search = table(
  "rain_search",
  "Days lost and their chance",
  { working: true, rows: mostDaysLost + 1 },
  {
    lost: calc(count, (row) => String(row - 1), "Days lost"),
    chance: calc(percent, "WAIT_CHANCE(lost,MAX(work_days/1[days],1),day_lost)", "Chance", {
      decimals: 2,
    }),
    enough: calc(yesno, "chance>=rain_confidence", "Enough"),
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
    days_lost: calc(days, "IF(work_days>0,SUMPRODUCT((rain_search.enough=FALSE)*1),0)*1[days]", "Days lost to allow", {
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
      `INDEX(rain_search.enough,${mostDaysLost + 1})`,
      `Over ${mostDaysLost} days would be lost, more than the table holds. Start in a drier month: enter start_month on sheet Decisions.`,
      { label: "Days lost beyond the table" },
    ),
  }),
  monthTable,
  search,
];
