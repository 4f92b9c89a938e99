import { precise, published, table, text } from "../../engine/template/index.js";

const chow = "Chow, Open-Channel Hydraulics, 1959, table 5-6 (from memory)";

/** Manning's roughness by bed. */
export const beds = table(
  "beds",
  "Stream beds",
  {
    rows: 6,
    data: [
      { name: "troweled mortar", roughness: 0.015, source: chow },
      { name: "stone set in mortar", roughness: 0.023, source: chow },
      { name: "gravel", roughness: 0.028, source: chow },
      { name: "laid stone, dry", roughness: 0.033, source: chow },
      { name: "cobble", roughness: 0.04, source: chow },
      { name: "cobble and boulders", roughness: 0.05, source: chow },
    ],
    note: "Shallow water over stone as large as its depth runs slower than any table says: expect more depth.",
  },
  {
    name: published(text, "Bed", { source: chow }),
    roughness: published(precise, "Manning's n", { source: chow, decimals: 3 }),
    source: published(text, "Source", { source: chow }),
  },
);
