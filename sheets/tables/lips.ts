import { number, office, precise, published, table, text } from "../../engine/template/index.js";
import { flowPerWidth } from "../vocabulary/quantities.js";

const swmm = "EPA SWMM Reference Manual II, section 6.3.2";

/** What an estimator can promise a customer, and the water it takes. */
export const looks = table(
  "looks",
  "Looks",
  {
    section: "Looks",
    rows: 6,
    filled: "per_width>0",
    data: [
      { name: "thin sheet", per_width: 50, said: "a light veil" },
      { name: "normal sheet", per_width: 100, said: "an even sheet of water" },
      { name: "full sheet", per_width: 150, said: "a full, lively sheet" },
      { name: "heavy sheet", per_width: 200, said: "a heavy, loud sheet" },
      { name: "rim film", per_width: 10, said: "a film of water over its rim" },
    ],
    note: "Flow for the width of lip: common practice, no source. Change the figures to what your customers see on finished work.",
  },
  {
    name: office(text, "Look"),
    per_width: office(flowPerWidth, "Flow per width", { least: 5, most: 1000 }),
    said: office(text, "Wording for customer", { optional: true }),
  },
);

/** How freely a lip lets the water go. */
export const lipKinds = table(
  "lip_types",
  "Lip types",
  {
    rows: 5,
    data: [
      {
        name: "sharp edge",
        built: 1,
        around: 1,
        coefficient: 3.33,
        source: `Francis 3.33: ${swmm}`,
      },
      {
        name: "rounded stone",
        built: 1,
        around: 1,
        coefficient: 3.09,
        source: "critical flow over a smooth broad crest: (2/3)^1.5 √g",
      },
      {
        name: "flat stone",
        built: 1,
        around: 1,
        coefficient: 2.5,
        source:
          "broad crest, after Brater and King 1976: 2.62 to 2.34 at 0.2 ft of water on stone 1.5 to 5 ft through (from memory); less water, less flow. 2.63 is only the limit named with it.",
      },
      {
        name: "pot rim",
        built: 0,
        around: Math.PI,
        coefficient: 3.09,
        source: "as rounded stone; the water runs over all of its rim, pi times what it measures across",
      },
      {
        name: "spillway bowl",
        built: 0,
        around: 1,
        coefficient: 3.09,
        source: "as rounded stone; the width is that of its spout",
      },
    ],
  },
  {
    name: published(text, "Lip", { source: swmm }),
    coefficient: published(precise, "Coefficient", {
      source: `${swmm}, in feet and seconds`,
      decimals: 2,
    }),
    built: published(number, "Stone lip, 1 yes", { source: "a pot has its own rim", decimals: 0 }),
    around: published(number, "Lip over width given", { source: "geometry", decimals: 2 }),
    source: published(text, "Source", { source: swmm }),
  },
);

export const sheetThicknessRatio = published(number, "Sheet thickness over critical depth", {
  working: true,
  value: 0.715,
  source: "Rouse: free overfall (from memory)",
  decimals: 3,
});
