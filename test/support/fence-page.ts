import { calculate } from "../../engine/evaluate/calculate.js";
import {
  calc,
  lines,
  money,
  paragraphs,
  prose,
  sheet,
  template,
  text,
} from "../../engine/template/index.js";
import { modelOf } from "../../engine/template/models.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity } from "./fence.js";
import { fenceTrail } from "./fence-bid.js";

/** The invented fence with a page that is handed out to the customer. */
export const pageFence = template({
  ...fence,
  sheets: [
    ...fence.sheets,
    sheet(
      "Letter",
      "For the customer.",
      [
        lines("What it costs", { letter_price: calc(money, "price", "Price") }),
        prose("Our offer", {
          letter_to: calc(text, '"For "&customer', "Line 1"),
          letter_run: calc(text, '"A fence of "&FIXED(total_run,0)&" ft"', "Line 2"),
          letter_sum: calc(text, '"Price: $"&FIXED(price,0)', "Line 3"),
        }),
        paragraphs("Caution", "Call before you dig.", "Keep children away from open holes."),
      ],
      { handout: true },
    ),
  ],
});

export const pageModel = modelOf(pageFence, "us");

const given = fenceGiven(pageModel);

export const pageValues = calculate(pageModel, given);

/** The job as a workbook, as it is written. */
export const pageWorkbook = (): Promise<Uint8Array> =>
  writeWorkbook(pageModel, pageValues, { ...fenceIdentity(pageModel), trail: fenceTrail });
