import { area, calc, check, length, moneyPerLength, office, text } from "../../../engine/template/index.js";
import type { Cells } from "../added.js";
import { practice } from "../rates.js";

/** Ground from which rain runs into the stream. */
export const streamCatchment: Cells = {
  stream_catchment: calc(
    area,
    "SUMPRODUCT(runs.length_counted,runs.width_counted+2*runs.side*runs.bank_height)+SUMPRODUCT(pools.length_counted,pools.width_counted)",
    "Stream catchment, bank to bank",
    { working: true },
  ),
};

/** The way of the pipes against that of the water. */
export const wayOfPipes: Cells = {
  pipe_fits_way: check(
    "main_length+MAX(pipe_lines.length)<=1.2*(basin_length+stream_length)+8[ft]",
    "The main, {main_length}, and its longest line go much farther than the stream. Correct main_length on sheet Walk.",
    { label: "Pipe longer than its way", level: "look" },
  ),
};

/** What a length of stream comes to. */
export const pricePerLength: Cells = {
  cost_per_foot: calc(moneyPerLength, "IF(stream_length>0,total_cost/stream_length,0)", "Cost per ‹foot|meter›", {
    note: "Of stream and pools.",
  }),
  price_per_foot: calc(moneyPerLength, "IF(stream_length>0,price/stream_length,0)", "Price per ‹foot|meter›", {
    note: "Of stream and pools.",
  }),
  price_per_fall: calc(
    moneyPerLength,
    "IF(shoulder_height>0,2*price/shoulder_height,0)",
    "Price per ‹foot|meter› of fall",
    {
      note: "Of the drops of all levels with a lip: tells more where the stream is short.",
    },
  ),
  price_per_foot_least: office(moneyPerLength, "Least price per ‹foot|meter›", {
    section: "Price",
    default: 300,
    least: 0,
    most: 100000,
    source: `${practice}: put in what the office's own finished jobs came to`,
  }),
  price_per_foot_most: office(moneyPerLength, "Most price per ‹foot|meter›", {
    section: "Price",
    default: 3500,
    least: 0,
    most: 100000,
    source: `${practice}: put in what the office's own finished jobs came to`,
  }),
  price_band: calc(
    text,
    '~{"$"&FIXED(price_per_foot_least/1[‹$/ft|$/m›],0)} to {price_per_foot_most|0}',
    "Band of price per ‹foot|meter›",
  ),
  price_in_band: check(
    "OR(price_per_foot<=0,AND(price_per_foot>=price_per_foot_least,price_per_foot<=price_per_foot_most))",
    "The price comes to {price_per_foot|0}, outside {price_per_foot_least|0} to {price_per_foot_most|0}. Look for a quantity left out or typed twice.",
    { label: "Price per length unusual", level: "look" },
  ),
};

export const runsLength: Cells = {
  runs_length: calc(length, "SUM(runs.length_counted)", "Stream length without pools"),
};
