import { calculate } from "../../engine/evaluate/calculate.js";
import { calc, panel, place, row, sheet, template, text } from "../../engine/template/index.js";
import { modelOf } from "../../engine/template/models.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity } from "./fence.js";
import { fenceTrail } from "./fence-bid.js";

/** The invented fence with a page on the grid, that keeps places for a logo and a photo. */
export const offerFence = template({
  ...fence,
  sheets: [
    ...fence.sheets,
    sheet(
      "Offer",
      "What the owner signs.",
      [
        panel([
          row(
            28,
            place([1, 9], "name", "An invented fence maker"),
            place([10, 3], "logo", "", { down: 2 }),
          ),
          row(18, place([1, 9], "small", ["offer_to", calc(text, '"For "&customer', "")])),
          row(
            20,
            place([1, 8], "heading", "What you will see"),
            place([9, 4], "photo", "Place for a photo. Nothing prints here while there is none.", {
              down: 4,
            }),
          ),
          row(62, place([1, 8], "text", ["offer_run", calc(text, "~{total_run|0} of fence", "")])),
          row(28, place([1, 8], "text", "Built to the drawing.")),
          row(26),
          row(30, place([8, 5], "price", ["offer_price", calc(text, "~{price}", "")])),
        ]),
      ],
      { portrait: true, handout: true },
    ),
  ],
});

export const offerModel = modelOf(offerFence, "us");

/** The job as a workbook, as it is written. */
export const offerWorkbook = (): Promise<Uint8Array> =>
  writeWorkbook(offerModel, calculate(offerModel, fenceGiven(offerModel)), {
    ...fenceIdentity(offerModel),
    trail: fenceTrail,
  });
