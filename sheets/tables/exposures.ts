import { number, percent, published, table, text } from "../../engine/template/index.js";

const practice = "common practice, no source";

/** How much of the measured wind blows over the water. */
export const windExposures = table(
  "wind_exposures",
  "Wind at the water",
  {
    working: true,
    rows: 3,
    data: [
      { name: "sheltered", share: 0.5 },
      { name: "as measured", share: 1 },
      { name: "open and gusty", share: 1.5 },
    ],
  },
  {
    name: published(text, "Wind", { source: practice }),
    share: published(percent, "Of the measured wind", { source: practice, decimals: 0 }),
  },
);

/** How much warmer than the weather's water temperature the sun makes the stream. */
export const sunExposures = table(
  "sun_exposures",
  "Sun on the water",
  {
    working: true,
    rows: 3,
    data: [
      { name: "shade", warmer: -3 },
      { name: "part sun", warmer: 0 },
      { name: "full sun", warmer: 3 },
    ],
  },
  {
    name: published(text, "Sun", { source: practice }),
    warmer: published(number, "Warmer by, in °C", { source: practice, decimals: 0 }),
  },
);
