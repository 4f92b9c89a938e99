import { density, published, table, text } from "../../engine/template/index.js";
import { rocks } from "./rocks.js";

export const rockTable = table(
  "rocks",
  "Solid density of rock (published)",
  { working: true, rows: rocks.length, data: rocks },
  {
    name: published(text, "Rock", { source: "see the last column" }),
    density: published(density, "Solid density", { source: "see the last column" }),
    origin: published(text, "Source", { source: "as given" }),
  },
);
