import { unprinted } from "../../../engine/template/index.js";
import { sunExposures, windExposures } from "../../tables/exposures.js";
import { basinFormulas } from "../../vocabulary/basin.js";
import { evaporationFormulas } from "../../vocabulary/evaporation.js";
import { item } from "../goods.js";
import { part } from "../part.js";
import { production } from "../rates.js";
import { task } from "../task.js";
import { basinCautions } from "./cautions.js";
import { daysChart, waterBars, waterChart } from "./charts.js";
import { crates } from "./crates.js";
import { basinDays } from "./days.js";
import { basinDig } from "./dig.js";
import { drawingSizes } from "./drawing-sizes.js";
import { evaporation } from "./evaporation.js";
import { hole } from "./hole.js";
import { crewOfBasin, handOverOfBasin, proposalOfBasin } from "./page-lines.js";
import { plan, planForCrew, planPoints } from "./plan.js";
import { designRain } from "./rain.js";
import { section, sectionPoints } from "./section.js";
import { basinStone, voidTable } from "./stone.js";
import { basinWater } from "./water.js";

export const basin = part("Basin", "The buried basin: what it must hold, what it holds, and what it loses.", {
  blocks: {
    Basin: [
      basinWater,
      (all) => ({ ...waterChart(all), beside: [daysChart] }),
      { ...section, lines: 19, beside: [plan] },
      hole,
      (all) => unprinted(crates(all)),
      basinDays,
      designRain,
      unprinted(basinDig),
    ],
    Drawings: [{ ...section, beside: [plan] }],
    "Drawing points": [waterBars, drawingSizes, ...sectionPoints, ...planPoints],
  },
  below: {
    Basin: [
      basinCautions,
      (all) => unprinted(basinStone(all)),
      (all) => evaporation(all).map(unprinted),
      voidTable,
      windExposures,
      sunExposures,
    ],
  },
  formulas: [...basinFormulas, ...evaporationFormulas],
  buys: {
    Basin: [
      { what: "storage crates", code: "crate_code", wanted: "crates_needed", unit: "each" },
      { what: "pump vaults", code: "vault_code", wanted: "vaults_needed", unit: "each" },
      {
        what: "extension rings",
        code: "extension_code",
        wanted: "extensions_needed",
        unit: "each",
      },
    ],
  },
  items: [
    item("crate", "storage crate", "each", 50),
    item("vault", "pump vault", "each", 400),
    item("vault-extension", "extension ring of the vault", "each", 100),
  ],
  tasks: [
    task(
      "Set crates and vault",
      "basin",
      "crates_needed+vaults_needed",
      production("crate-set", "Assemble and set storage crates", "each", 3),
      ["open_dig", "by_access"],
    ),
  ],
  crew: crewOfBasin,
  crewDrawings: [planForCrew],
  proposal: proposalOfBasin,
  handOver: handOverOfBasin,
});
