import {
  percent,
  precise,
  published,
  smallLength,
  table,
  text,
} from "../../engine/template/index.js";

const chow = "Chow, Open-Channel Hydraulics, 1959, table 5-6 (from memory)";

const guess = "common practice, no source: 0 where mortar holds the stone";

/** Manning's roughness by bed; size and voids of the stone that the water runs over and through. */
export const beds = table(
  "beds",
  "Stream beds",
  {
    rows: 6,
    data: [
      { name: "troweled mortar", roughness: 0.015, stone_size: 0, voids: 0, source: chow },
      { name: "stone set in mortar", roughness: 0.023, stone_size: 0, voids: 0, source: chow },
      { name: "gravel", roughness: 0.028, stone_size: 1, voids: 0.38, source: chow },
      { name: "laid stone, dry", roughness: 0.033, stone_size: 4, voids: 0.3, source: chow },
      { name: "cobble", roughness: 0.04, stone_size: 4, voids: 0.4, source: chow },
      { name: "cobble and boulders", roughness: 0.05, stone_size: 8, voids: 0.35, source: chow },
    ],
    note: "Shallow water over stone as large as its depth runs slower than any table says: expect more depth.",
  },
  {
    name: published(text, "Bed", { source: chow }),
    roughness: published(precise, "Manning's n", { source: chow, decimals: 3 }),
    stone_size: published(smallLength, "Size of its stone", { source: guess }),
    voids: published(percent, "Voids between its stone", { source: guess, decimals: 0 }),
    source: published(text, "Source of Manning's n", { source: chow }),
  },
);
