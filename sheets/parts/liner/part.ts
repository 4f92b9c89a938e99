import { unprinted } from "../../../engine/template/index.js";
import { bullet, bulletEachRow, under } from "../../plan/page-line.js";
import { counted } from "../../vocabulary/counted.js";
import { linerFormulas } from "../../vocabulary/liner.js";
import { item } from "../goods.js";
import { type Part, part } from "../part.js";
import { production, withMachine } from "../rates.js";
import { task } from "../task.js";
import { carrying } from "./carrying.js";
import { linerCautions } from "./cautions.js";
import type { Lined } from "./lined.js";
import { linerTotals } from "./liner-bought.js";
import { linerOrders } from "./orders.js";
import { linerPieces } from "./pieces.js";
import { basinPlanChosen, linerPlanChosen, linerPlans, linerSheets } from "./plans.js";
import { linerRolls } from "./rolls.js";
import { linerRules } from "./rules.js";
import { linerCuts, linerWorking } from "./working.js";

/** The liner of what is lined. */
const linerOf = (lined: Lined): Part =>
  part("Liner", "The pieces of liner, how they are cut from rolls, and who carries them.", {
    blocks: {
      Liner: [
        linerTotals,
        // the one plan of a basin says nothing that its piece does not
        lined === "course" ? linerPlans(lined) : unprinted(linerPlans(lined)),
        ...(lined === "course" ? [linerPlanChosen, linerSheets] : [basinPlanChosen]),
        linerRules(lined),
        linerPieces(lined),
        linerRolls,
        carrying,
      ],
      Wording: [linerOrders],
    },
    below: { Liner: [linerCautions(lined), linerWorking(lined), linerCuts(lined)] },
    formulas: linerFormulas,
    buys: {
      Liner: [
        { what: "liner", code: "liner_code", wanted: "liner_area_bought", unit: "ft²" },
        {
          what: "underlayment",
          code: "underlayment_code",
          wanted: "underlayment_area",
          unit: "ft²",
        },
        { what: "seam tape", code: "seam_code", wanted: "seam_length", unit: "ft" },
      ],
    },
    items: [
      item("liner-45mil", "liner, 45 mil, cut from the roll", "ft²"),
      item("underlayment", "underlayment", "ft²"),
      item("seam-tape", "seam tape", "ft"),
    ],
    tasks: [
      task(
        "Lay liner and underlayment",
        "liner",
        "liner_area_bought",
        withMachine(production("liner-laid", "Lay liner with underlayment", "ft²", 55), 0.1),
        ["open_dig", "by_access"],
      ),
      task("Make seams", "liner", "seam_length", production("seam-made", "Make seams", "ft", 6)),
    ],
    crew: [
      ...under(
        "Lay liner and underlayment",
        bullet("step: liner", "Measure the finished dig, tape along the ground, before anything is cut."),
        // rounded up: a cut too short cannot be mended
        ...bulletEachRow(
          "step: liner",
          linerPieces(lined),
          '{name}: finished {length|up} × {width|up}; cut {pieces} of {cut_length|up} off the {roll_width} roll, roll across its {IF(turned,"width","length")}.',
          { when: "in_plan" },
        ),
        ...(lined === "course"
          ? [
              bullet(
                "step: liner",
                "Begin at the basin: the stream's sheet laps {fall_overlap} over the basin's; then uphill.",
                "AND(liner_plan_row=2,stream_sheet_length>0)",
              ),
            ]
          : []),
        bullet(
          "step: liner",
          'Underlayment under all of it: {underlayment_area|0}.{IF(seam_length>0,""," No seams.")}',
        ),
        bullet(
          "step: liner",
          `Heaviest cut {liner_weight_heaviest|0}: {${counted("liner_people", "person", "people")}} to carry it{IF(liner_people<=crew_size,IF(by_hand,"",", or the machine"),", the crew is "&FIXED(crew_size,0)&": "&IF(by_hand,"","by machine, or ")&"bring "&FIXED(liner_people-crew_size,0)&" more")}.`,
        ),
      ),
      ...under(
        "Make seams",
        bullet(
          "step: liner",
          `Seams: {seam_length}, laps {seam_lap|up} wide${lined === "course" ? ", the uphill sheet over the lower one" : ""}.`,
          "seam_length>0",
        ),
        ...(lined === "course"
          ? [
              bullet(
                "step: liner",
                `The stream's seam lies {stream_seam_at} along the ground from the basin's edge{IF(stream_strips>2,", further ones "&stream_seams_apart&" apart","")}; not where a fall lands.`,
                "stream_seam_at>0",
              ),
            ]
          : []),
        bullet("step: liner", "Fill and watch the level before stone covers the liner."),
      ),
    ],
  });

/** Of a water course and its basin. */
export const liner = linerOf("course");

/** Of a basin alone. */
export const basinLiner = linerOf("basin");
