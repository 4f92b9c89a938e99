import {
  type CalcDeclaration,
  calc,
  type PanelBlock,
  panel,
  place,
  row,
  text,
} from "../../../engine/template/index.js";

const said = (name: string, formula: string): readonly [string, CalcDeclaration] => [
  name,
  calc(text, formula, "", { reader: "crew" }),
];

/** Where things stand on the site: a sketch, and beside it the distances that the walk knows. */
export const siteSketch = (): PanelBlock =>
  panel([
    row(18, place([1, 7], "heading", "Where things stand"), place([8, 5], "heading", "Known from the walk")),
    row(
      16,
      place([1, 7], "slot", "Site sketch: stakes, berm, walls, trees, stone drop", { down: 4 }),
      place([8, 5], "small", said("site_ways", "~Haul {site_haul|0} from the truck to the work, by {work_method}.")),
    ),
    row(
      16,
      place(
        [8, 5],
        "small",
        said("site_drop", '~Trucks tip here: {IF(LEN(stone_drop)>0,stone_drop,"as staked with the office")}.'),
      ),
    ),
    row(14, place([8, 5], "small", said("site_trees", 'TEXTJOIN("; ",TRUE,tree_lines.away)'))),
    row(
      36,
      place(
        [8, 5],
        "small",
        "What no line here gives, such as manifold, valve box, transformer and the way of pipes and cables, stands as staked with the office.",
      ),
    ),
  ]);
