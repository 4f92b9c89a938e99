import { area, calc, check, decide, length, number, table, text, yesno } from "../../../engine/template/index.js";
import { soilVolume } from "../../vocabulary/quantities.js";
import { capacity } from "../capacity.js";

export const bermTable = table(
  "berms",
  "Berms, compacted in place",
  {
    rows: capacity.berms,
    filled: "height>0",
    note: "Length is of the crest at full height; the ends run out to nothing beyond it. Height is from the ground before it is stripped.",
  },
  {
    name: decide(text, "Berm"),
    length: decide(length, "Length of the crest", { again: true, default: 0, least: 0, most: 1000 }),
    height: decide(length, "Height", { again: true, least: 0.1, most: 20 }),
    top: decide(length, "Width of the top", { default: 4, least: 0, most: 100 }),
    slope: decide(number, "Side slope: run to 1", {
      default: 3,
      least: 0.25,
      most: 10,
      decimals: 1,
    }),
    end_slope: decide(number, "End slope: run to 1", {
      default: 4,
      least: 0,
      most: 20,
      decimals: 1,
    }),
    held: decide(yesno, "Held by wall or design", {
      note: "A wall, or an engineer's design.",
      default: false,
    }),
    middle: calc(soilVolume, "length*BERM_SECTION(height,top,slope)", "Middle part"),
    ends: calc(soilVolume, "2*FEATHERED_END(height,top,slope,end_slope)", "Feathered ends"),
    volume: calc(soilVolume, "middle+ends", "Volume"),
    footprint: calc(area, "length*(top+2*slope*height)+2*end_slope*height*(top+slope*height)", "Ground covered"),
    steepest: calc(number, "MIN(slope,end_slope)", "Steepest side: run to 1", { decimals: 1 }),
    stands: check(
      "OR(held,ROUND(steepest-fill_slope,9)>=0)",
      "{name}: a side at {steepest|1} to 1, but {soil_kind} stands {fill_slope|1} to 1. Flatten it, or set held, in berms on sheet Decisions.",
      { label: "Berm too steep" },
    ),
  },
);

export const bermLines = table(
  "berm_lines",
  "Berms in words",
  { working: true, rows: bermTable.rows, beside: "berms", filled: "height>0" },
  {
    said: calc(
      text,
      "~{name}: {height} high, {top} wide on top, crest {length} long, sides {FIXED(slope,DECIMALS_NEEDED(slope))} to 1, ends {FIXED(end_slope,DECIMALS_NEEDED(end_slope))} to 1",
      "For the crew",
      { reader: "crew" },
    ),
  },
);
