import { date, hours, input, lines, number, percent } from "../../engine/template/index.js";

const practice = "common practice, no source";

/** What the office decides of how its jobs are weighed. */
export const learningRules = lines("How jobs are weighed", {
  learned_on: input(date, "Day of learning", { note: "Jobs are as old as they are on this day." }),
  interval_share: input(percent, "Interval", {
    default: 0.8,
    least: 0.5,
    most: 0.99,
    decimals: 0,
    note: "The chance that the interval of a rate is meant to hold.",
  }),
  book_worth: input(number, "Book counts as jobs", {
    default: 3,
    least: 0.1,
    most: 100,
    decimals: 1,
    note: "How many large, new jobs the office book's rate is worth. More: jobs move it less.",
    source: practice,
  }),
  prior_spread: input(percent, "Spread between jobs expected", {
    default: 0.3,
    least: 0.02,
    most: 2,
    decimals: 0,
    note: "How far one job's rate lies from another's, before any job is known.",
    source: practice,
  }),
  prior_jobs: input(number, "Expected spread counts as jobs", {
    default: 4,
    least: 1,
    most: 100,
    decimals: 1,
    note: "Keeps few jobs, alike by chance, from telling a spread of nothing.",
    source: practice,
  }),
  half_life: input(number, "Half-life of a job, years", {
    default: 4,
    least: 0.2,
    most: 100,
    decimals: 1,
    note: "A job of that age counts half as much as one of today.",
    source: practice,
  }),
  half_hours: input(hours, "Man-hours that count half", {
    default: 4,
    least: 0,
    most: 1000,
    note: "A task planned for so many man-hours tells half of what a very long one does.",
    source: practice,
  }),
  far_share: input(percent, "Far from the others", {
    default: 0.02,
    least: 0.001,
    most: 0.2,
    note: "A job counts as far where so few would lie as far by chance. It is told, and stays in.",
    source: practice,
  }),
  whole_spread: input(percent, "Spread of whole jobs expected", {
    default: 0.15,
    least: 0.02,
    most: 2,
    decimals: 0,
    note: "Of the hours of a whole job, which spread less than those of one task.",
    source: practice,
  }),
});
