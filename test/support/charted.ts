import * as t from "../../engine/template/index.js";
import { toy } from "./toy.js";

/** The toy with charts of every kind. */
export const charted = t.template({
  ...toy,
  sheets: [
    ...toy.sheets,
    t.sheet("Charts", "Drawn.", [
      t.lines("One", { widest_surface: t.calc(t.area, "widest*plot", "Widest") }),
      t.chart("Beds & edging", "Width", "Height", [
        { label: "Wide", x: "beds.place", y: "beds.surface", marks: "line", look: "heavy" },
        { label: "Each", x: "beds.place", y: "beds.surface", marks: "points", says: "beds.said" },
        {
          label: "",
          x: "beds.place",
          y: "beds.surface",
          marks: "names",
          says: "beds.name",
          at: "left",
        },
        { label: "All", x: "days_needed", y: "widest_surface", marks: "points", legend: false },
      ]),
      t.chart(
        "To scale",
        "Width",
        "Depth",
        [{ label: "Bed", x: "beds.place", y: "beds.surface", marks: "line" }],
        { ratio: 2, without: ["up"], lines: 12, alt: "An outline." },
      ),
    ]),
    t.sheet("Bars", "Bars.", [
      t.chart(
        "Edging",
        "Cost",
        "",
        [
          {
            label: "Cost",
            x: "bed_prices.label",
            y: "bed_prices.edging",
            marks: "bars",
            says: true,
          },
        ],
        { summary: true },
      ),
      t.chart("Soil", "Volume", "", [
        { label: "Soil", x: "beds.name", y: "beds.filling", marks: "stack", says: true },
        { label: "So far", x: "beds.name", y: "beds.carried", marks: "stack" },
      ]),
    ]),
  ],
});
