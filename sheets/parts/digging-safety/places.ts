import {
  area,
  calc,
  check,
  count,
  length,
  number,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import type { DugPlace, Whole } from "../brought.js";

const basin: DugPlace = {
  what: '"Basin"',
  depth: "dig_deepest",
  length: "dig_bottom_length",
  around: "2*(dig_bottom_length+dig_bottom_width)",
  sides: "dig_slope",
  protection: "dig_protection",
};

/** Others may have dug it, and then hold its sides: our crew goes in all the same. */
const trench = (i: number): DugPlace => ({
  what: `"Trench of "&INDEX(trenches.trench,${i})`,
  depth: `INDEX(trenches.open_depth,${i})`,
  length: `INDEX(trenches.open_length,${i})`,
  around: `2*INDEX(trenches.dug,${i})`,
  sides: "0",
  protection: "trench_protection",
});

type Trenches = Pick<Whole, "trenches" | "digs">;

const placesOf = ({ trenches, digs }: Trenches): readonly DugPlace[] => [
  basin,
  ...trenches.map((_, i) => trench(i + 1)),
  ...digs,
];

/** How deep each place is dug, which tells whether it is. */
export const placeList = (all: Trenches): TableBlock => {
  const places = placesOf(all);
  return table(
    "dig_list",
    "Depths of digs",
    { working: true, rows: places.length },
    { depth: calc(length, (row) => (places[row - 1] as DugPlace).depth, "Depth") },
  );
};

const safe =
  'OR(NOT(needed), by = "shored or shielded", by = "engineered", AND(by = "sloped", ROUND(run - safe_slope, 9) >= 0))';

/** Each place against the excavation standard, by its own depth, sides and protection. */
export const placesDug = (all: Trenches): TableBlock => {
  const places = placesOf(all);
  const of = (row: number): DugPlace => places[row - 1] as DugPlace;
  return table(
    "digs",
    "Digs and their protection",
    {
      rows: places.length,
      beside: "dig_list",
      filled: "depth>0",
      note: "Each place counts by itself: a sloped basin does not protect an upright trench beside it.",
    },
    {
      place: calc(text, (row) => of(row).what, "Place"),
      deep: calc(length, "depth", "Depth", { strong: true }),
      run: calc(number, (row) => of(row).sides, "Side slope, run:1", { decimals: 2 }),
      by: calc(text, (row) => of(row).protection, "Protection chosen"),
      needed: calc(
        yesno,
        'AND(dig_soil_type <> "stable rock", OR(ROUND(depth - protection_depth, 9) >= 0, cave_in_seen))',
        "Protection needed",
        { source: "29 CFR 1926.652(a)(1)" },
      ),
      protected: check(
        safe,
        "{place}: {deep} deep in {dig_soil_type} soil, {by} protection, sides {run} to 1. Shore, shield or slope it {safe_slope} to 1: sheet Decisions (29 CFR 1926.652).",
        { label: "Dig without protection" },
      ),
      face: calc(
        area,
        (row) => `IF(OR(by = "shored or shielded", by = "engineered"), (${of(row).around}) * deep, 0[ft²])`,
        "Face to be held",
        { zero: "–" },
      ),
      entered: calc(text, 'IF(ROUND(depth - inspection_depth, 9) >= 0, place, "")', "Deep enough to inspect", {
        working: true,
      }),
      ways_out: calc(
        count,
        (row) => `IF(ROUND(deep-ladder_depth,9)>=0,MAX(1,WHOLE_UP(${of(row).length}/(2*ladder_travel))),0)`,
        "Ways out needed",
        { zero: "–" },
      ),
    },
  );
};
