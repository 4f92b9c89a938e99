import {
  calc,
  count,
  input,
  number,
  precise,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../engine/template/index.js";
import { bookRates, ways } from "./lists.js";
import { posterior } from "./posterior.js";

const { jobs, weights, rate, change, low, high, spread, next_low, next_high, ...steps } = posterior(
  "place",
  "place",
  "in_book",
);
const unread = { working: true } as const;

const summed = (column: string) => `SUM_WHERE(evidence.${column},evidence.place,place)`;
const filled = "LEN(code)>0";

/** What each rate of the office book has come to on built jobs, and whether the office takes it. */
export const learnedRates: TableBlock = table(
  "learned",
  "Rates",
  {
    rows: bookRates.rows,
    beside: "book_rates",
    filled,
    shown: "jobs>0",
    note: "Units an hour of one person, for rates with a built job. From and to: there the mean rate lies, by book and jobs together.",
  },
  {
    rate_name: calc(text, 'means&", "&unit', "Rate"),
    in_book: calc(precise, "book_rate", "In the book", { decimals: 3 }),
    rate,
    low,
    high,
    jobs,
    take_it: input(yesno, "Take it", {
      default: false,
      note: "yes: the learned rate goes into a new office book by rillbook learn --take.",
    }),
    says: calc(
      text,
      'IF(book_rate<low,FIXED(100*change,0)&"% faster",IF(book_rate>high,FIXED(-100*change,0)&"% slower","as the book"))',
      "Than the book",
    ),
    new_rate: calc(precise, "ROUNDED_RATE(rate)", "For the book", {
      working: true,
      decimals: 3,
      note: "To three digits, as it goes into the office book.",
    }),
    rate_then: calc(precise, "IF(take_it,IF(jobs>0,ROUNDED_RATE(rate),in_book),in_book)", "Rate of the next bids", {
      working: true,
      decimals: 3,
      note: "The learned one where it is marked to be taken, else that of the book.",
    }),
    place: calc(count, "PLACE_OR_ZERO(book_rates.code,code)", "Row", { working: true }),
    rows: calc(count, "COUNT_WHERE(evidence.place,place)", "Rows of jobs", unread),
    change: { ...change, ...unread },
    weights: { ...weights, ...unread },
    ...steps,
  },
);

/** How far single jobs lie from one another, and what lies far off. */
export const spreads: TableBlock = table(
  "spreads",
  "Between jobs",
  {
    rows: bookRates.rows,
    beside: "learned",
    filled: "rows>0",
    note: "One job, from and to: there a single next job of good size comes out, which is wider than where the mean lies.",
  },
  {
    spread_name: calc(text, "rate_name", "Rate"),
    spread,
    next_low,
    next_high,
    count_as: calc(number, "weights", "Jobs count as", {
      decimals: 1,
      note: "In large, new jobs: small tasks and old jobs count less.",
    }),
    far: calc(count, "SUMPRODUCT((evidence.place=place)*evidence.far*evidence.counted)", "Rows far", { zero: "none" }),
    without_far: calc(
      precise,
      "IF(far>0,in_book*EXP((pull-far_pull)/MAX(0.000001,worth-far_weight)),rate)",
      "Rate without far",
      { decimals: 3 },
    ),
    excluded: calc(
      count,
      "SUMPRODUCT((evidence.place=place)*(1-evidence.counted)*(evidence.hours>0[h]))",
      "Rows left out",
      { zero: "none", note: "Rows excluded with a reason, or that cannot be compared." },
    ),
    far_pull: calc(precise, summed("far_pull"), "Pull of those far", { working: true }),
    far_weight: calc(precise, summed("far_weight"), "Weight of those far", { working: true }),
  },
);

const byWay = posterior("way", "way", "book_rate");

/** The same by the way the work was done: where rows of one rate disagree, a time factor is off, not the rate. */
export const byMethod: TableBlock = table(
  "by_method",
  "Rates by method",
  {
    rows: ways.rows,
    beside: "ways",
    filled,
    shown: "jobs>0",
    note: "Site factors are taken out already. Where one rate has unlike paces by method, look at its time factor before the rate.",
  },
  {
    way_name: calc(text, "IF(place>0,INDEX(book_rates.means,MAX(1,place)),code)", "Rate"),
    way_method: calc(text, "method", "Method"),
    place: calc(count, "PLACE_OR_ZERO(book_rates.code,code)", "Row of its rate", unread),
    way: calc(count, "WAY(place,method)", "Rate and method", unread),
    book_rate: calc(precise, "IF(place>0,INDEX(book_rates.book_rate,MAX(1,place)),0)", "In the book", { decimals: 3 }),
    ...byWay,
    next_low: { ...byWay.next_low, ...unread },
    next_high: { ...byWay.next_high, ...unread },
    weights: { ...byWay.weights, ...unread },
  },
);
