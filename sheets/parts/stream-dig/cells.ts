import { area, calc, decide, number, office, percent, smallLength, text } from "../../../engine/template/index.js";
import { soilVolume } from "../../vocabulary/quantities.js";
import type { Cells } from "../added.js";
import type { DugPlace } from "../brought.js";
import { capacity } from "../capacity.js";
import { held } from "../held.js";
import { practice } from "../rates.js";

/** What runs and pools add to the strip. */
export const strippedByStream: Cells = {
  stream_on_berms: decide(percent, "Stream on berms, share", {
    default: 0,
    least: 0,
    most: 1,
    decimals: 0,
    note: "Stripped once, under the berm. 0: all of the stream is stripped too, on the safe side.",
  }),
  stream_ground: calc(
    area,
    "(SUMPRODUCT(runs.length_counted*(channel_cuts.top+2*strip_margin))+SUM(pool_cuts.ground))*(1-stream_on_berms)",
    "Stream ground stripped",
    { working: true },
  ),
};

/** What is dug for runs and pools. */
export const dugByStream: Cells = {
  channel_cut: decide(percent, "Cut share of channel", {
    note: "The rest of its depth is built up.",
    default: 0.5,
    least: 0,
    most: 1,
    decimals: 0,
  }),
  channel_allowance: office(smallLength, "Extra width for stone", {
    default: 4,
    least: 0,
    most: 36,
    note: "The bed is cut deeper by the depth of its stone, which stands on sheet Decisions.",
    source: practice,
  }),
  channel_dig: calc(soilVolume, "SUM(channel_cuts.dig)", "Channel of the stream"),
  pool_dig: calc(soilVolume, "SUM(pool_cuts.dig)", "Pools", { zero: "0" }),
  pool_backfill: calc(soilVolume, "SUM(pool_cuts.sloped)", "Backfill around pools", {
    working: true,
    note: "Of pools with sloped sides.",
  }),
};

/** How the sides of runs and pools are held. */
export const streamProtection: Cells = {
  pool_protection: decide(text, "Protection of pools", {
    default: "none",
    choices: ["none", "sloped", ...held],
  }),
  pool_sides: decide(number, "Pool side slope, run:1", {
    default: 0,
    least: 0,
    most: 6,
    decimals: 2,
  }),
  stream_protection: decide(text, "Protection of stream cuts", {
    default: "none",
    choices: ["none", "sloped", ...held],
    note: "Sloped: at the side slope of the run.",
  }),
};

const rows = (many: number, row: (i: number) => DugPlace): DugPlace[] =>
  Array.from({ length: many }, (_, i) => row(i + 1));

const pool = (i: number): DugPlace => ({
  what: `INDEX(pool_cuts.pool,${i})`,
  depth: `INDEX(pool_cuts.deepest,${i})`,
  length: `INDEX(pool_cuts.box_length,${i})`,
  around: `2*(INDEX(pool_cuts.box_length,${i})+INDEX(pool_cuts.box_width,${i}))`,
  sides: "pool_sides",
  protection: "pool_protection",
});

const streamCut = (i: number): DugPlace => ({
  what: `INDEX(channel_cuts.run,${i})`,
  depth: `INDEX(channel_cuts.deepest,${i})`,
  length: `INDEX(runs.length_counted,${i})`,
  around: `2*INDEX(runs.length_counted,${i})`,
  sides: `INDEX(runs.side,${i})`,
  protection: "stream_protection",
});

/** Pools and runs, each a place that somebody may stand in. */
export const streamPlaces: readonly DugPlace[] = [...rows(capacity.pools, pool), ...rows(capacity.runs, streamCut)];
