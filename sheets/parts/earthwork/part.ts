import { unprinted } from "../../../engine/template/index.js";
import { bullet, under } from "../../plan/page-line.js";
import { groundFormulas } from "../../vocabulary/ground.js";
import { item } from "../goods.js";
import { hired } from "../hire.js";
import { type Part, part } from "../part.js";
import { groundBalance } from "./balance.js";
import { groundCautions } from "./cautions.js";
import { digs } from "./digs.js";
import { soilLines, soilTable } from "./soil.js";
import { type EarthworkWords, earthworkTasks } from "./tasks.js";

/** The earth of a water feature, its tasks named by what is dug. */
export const earthworkOf = (words: EarthworkWords): Part =>
  part("Earthwork", "What is stripped, dug, kept and hauled away.", {
    blocks: { Earthwork: [groundBalance, unprinted(soilLines), digs] },
    below: { Earthwork: [groundCautions, soilTable] },
    formulas: groundFormulas,
    buys: {
      Earthwork: [
        {
          // its price holds the delivery
          what: "soil brought in, loose",
          code: "import_code",
          wanted: "import_volume",
          unit: "yd³",
          waste: 0.05,
        },
      ],
    },
    items: [item("fill-soil", "soil brought in, delivered", "yd³")],
    hires: [hired("Soil hauled away", "haul_loads", "truck-load", "Truck load of soil hauled away", "$/load")],
    tasks: earthworkTasks(words),
    crew: [
      bullet(
        "step: strip",
        "Topsoil: strip {strip_depth|0}, keep {topsoil_kept|0} of {strip_volume|0} on a heap of its own.",
        "strip_volume>0",
      ),
      bullet(
        "step: dig",
        'Measured in the ground: {dig_volume|1} dug{IF(trench_spare>=0.05[yd³],", the trenches leave "&FIXED(trench_spare/1[‹yd³|m³›],1)&" ‹yd³|m³›","")}; {dirt_used|1} stay as fill{IF(berm_volume>0,", for the berm first","")}.',
        "dirt_used>0",
      ),
      ...under(
        `Fill around ${words.filled}, compact in lifts`,
        bullet("step: backfill", "In thin layers, once the liner has held water.", "backfill>0"),
      ),
      ...under(
        "Spread the topsoil kept",
        bullet(
          "step: topsoil",
          "About {strip_depth|0} deep where ground lies bare, {topsoil_ends}.",
          "strip_volume*topsoil_kept>0",
        ),
      ),
      ...under(
        "Wheel dirt, soil and topsoil",
        bullet(
          "step: haul",
          "By barrow: {dirt_wheeled|0}, counted where it lies, {site_haul|0} between work and truck.",
          "dirt_wheeled>0",
        ),
      ),
      bullet(
        "step: haul",
        'Haul away {haul_volume|0} loose, {haul_loads|0} {IF(haul_loads=1,"load","loads")}.',
        "haul_loads>0",
      ),
      bullet("step: haul", "Soil to bring in: {import_volume|1} loose.", "import_volume>0"),
    ],
  });

export const earthwork = earthworkOf({ dug: "basin and stream", filled: "basin and pools" });
