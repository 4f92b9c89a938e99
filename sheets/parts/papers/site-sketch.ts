import { type PanelBlock, panel, place, row } from "../../../engine/template/index.js";
import { saidTo } from "./said-to.js";

const said = saidTo("crew");

/** Where things stand on the site: a sketch, and beside it the distances that the walk knows. */
export const siteSketch = (): PanelBlock =>
  panel([
    row(22, place([1, 7], "heading", "Where things stand"), place([8, 5], "heading", "Known from the walk")),
    row(
      14,
      place([1, 7], "slot", "Site sketch: stakes, berm, walls, trees, stone drop", { down: 4 }),
      place(
        [8, 5],
        "text",
        said("site_ways", '~Haul {site_haul|0} from truck to work, {IF(by_hand,"","by ")&work_method}.'),
      ),
    ),
    row(
      14,
      place(
        [8, 5],
        "text",
        said("site_drop", '~Trucks tip here: {IF(LEN(stone_drop)>0,stone_drop,"as staked with the office")}.'),
      ),
    ),
    row(
      26,
      place(
        [8, 5],
        "text",
        "Manifold, valve box, transformer, the way of pipes and cables: as staked with the office.",
      ),
    ),
    // last, so that a site without trees leaves no gap
    row(22, place([8, 5], "text", said("site_trees", 'TEXTJOIN("; ",TRUE,tree_lines.away)'))),
  ]);
