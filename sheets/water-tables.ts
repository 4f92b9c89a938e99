import { sheet } from "../engine/template/index.js";
import { beds } from "./tables/beds.js";
import { fittings, inletFittings, tees } from "./tables/fittings.js";
import { lipKinds } from "./tables/lips.js";
import { pipeSizes } from "./tables/pipe-bores.js";
import { valveOpening } from "./tables/valve-opening.js";

/** The published tables that the water is calculated with. */
export const waterTablesSheet = sheet(
  "Water tables",
  "The published figures behind the water sheets, each with its source.",
  [pipeSizes, fittings, tees, inletFittings, valveOpening, lipKinds, beds],
  { printed: false },
);
