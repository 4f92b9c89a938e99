import { current, published, table, text } from "../../engine/template/index.js";
import { conductorArea } from "../vocabulary/quantities.js";

const areas = "NEC Chapter 9, Table 8 (from memory)";
const limits = "NEC 240.4(D), and 60 °C column of Table 310.16 from 8 AWG on (from memory)";

/** Copper conductors that have lines on Materials, with the largest breaker that protects them. */
export const wireSizes = [
  { name: "12 AWG", area: 6530, breaker: 20 },
  { name: "10 AWG", area: 10380, breaker: 30 },
  { name: "8 AWG", area: 16510, breaker: 40 },
  { name: "6 AWG", area: 26240, breaker: 55 },
] as const;

export const wireTable = table(
  "wires",
  "Copper conductors (published)",
  { working: true, rows: wireSizes.length, data: wireSizes },
  {
    name: published(text, "Size", { source: areas }),
    area: published(conductorArea, "Area", { source: areas }),
    breaker: published(current, "Largest breaker", { source: limits, decimals: 0 }),
  },
);
