import { area, calc, check, percent, table, text } from "../../../engine/template/index.js";
import { beds } from "../../tables/beds.js";

/** Each kind of bed that the stream has, and whether the classes of stone buy it once. */
export const bedsBought = table(
  "beds_bought",
  "Stone for stream beds",
  { working: true, rows: beds.rows, beside: "beds" },
  {
    kind: calc(text, "name", "Bed"),
    covered: calc(
      area,
      "SUMPRODUCT((runs.bed=name)*runs.length_counted*runs.width_counted)+IF(name=pool_bed,SUM(pools.surface),0[ft²])",
      "Runs and pools with it",
    ),
    bought: calc(
      percent,
      'SUMPRODUCT((stone_places.covers="stream bed")*(stone_places.bed=name)*stone_places.share)',
      "Share bought",
    ),
    bed_bought: check(
      "OR(covered<=0,AND(stone_size<=0,bought<=1),ABS(bought-1)<0.001)",
      "{kind} covers {covered}, but the stone placed there takes {bought} of it. Make its shares 100% in stone_places on sheet Decisions.",
      { label: "Bed stone not bought once" },
    ),
  },
);
