import { percent, precise, published, smallLength, table, text } from "../../engine/template/index.js";

const chow = "Chow, Open-Channel Hydraulics, 1959, table 5-6, as reproduced";
const recalled = "Chow, Open-Channel Hydraulics, 1959, table 5-6 (from memory)";
const guess = "common practice, no source; 0 where mortar holds the stone";
const sizes =
  "loose stone: common practice, no source. In mortar: the size whose deep-water limit n = D84^(1/6)/(6.5 √g) is Manning's n";

/** Size and voids of the stone that the water runs over and through, by bed; Manning's roughness. */
export const beds = table(
  "beds",
  "Stream beds",
  {
    rows: 6,
    data: [
      {
        name: "troweled mortar",
        roughness: 0.013,
        stone_size: 0.013,
        voids: 0,
        source: `${chow}: concrete, trowel finish 0.011 to 0.015`,
      },
      {
        name: "stone set in mortar",
        roughness: 0.025,
        stone_size: 0.7,
        voids: 0,
        source: `${recalled}: masonry, cemented rubble 0.017 to 0.030`,
      },
      {
        name: "gravel",
        roughness: 0.025,
        stone_size: 1,
        voids: 0.38,
        source: `${chow}: excavated channel, gravel, uniform section, clean 0.022 to 0.030`,
      },
      {
        name: "laid stone, dry",
        roughness: 0.032,
        stone_size: 4,
        voids: 0.3,
        source: `${recalled}: masonry, dry rubble 0.023 to 0.035`,
      },
      {
        name: "cobble",
        roughness: 0.04,
        stone_size: 4,
        voids: 0.4,
        source: `${chow}: cobble bottom and clean sides 0.030 to 0.050`,
      },
      {
        name: "cobble and boulders",
        roughness: 0.05,
        stone_size: 8,
        voids: 0.35,
        source: `${chow}: cobbles with large boulders 0.040 to 0.070`,
      },
    ],
    note: "D84: 84 of 100 stones of the bed are smaller. The depth is calculated from it. Manning's n serves to compare.",
  },
  {
    name: published(text, "Bed", { source: chow }),
    roughness: published(precise, "Manning's n", { source: chow, decimals: 3 }),
    stone_size: published(smallLength, "Stone size, D84", { source: sizes, decimals: 3 }),
    voids: published(percent, "Voids in bed stone", { source: guess, decimals: 0 }),
    source: published(text, "Source of Manning's n", { source: chow }),
  },
);
