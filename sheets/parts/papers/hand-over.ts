import { type Block, panel, place, row } from "../../../engine/template/index.js";
import { handOverPage } from "../../plan/hand-over-page.js";
import type { Whole } from "../brought.js";
import { letterhead } from "./letterhead.js";
import { pageLines } from "./page-lines.js";
import { saidTo } from "./said-to.js";

const said = saidTo("customer");

/** What the owner keeps: how it runs, what to do through the year, what is normal, when to call. */
export function handOver(all: Whole): { readonly page: readonly Block[]; readonly working: readonly Block[] } {
  const sections = handOverPage.map(({ name }) => name).filter((name) => name !== "opening");
  const { working, flows } = pageLines("hand_over", "Hand-over", "customer", all.handOver, [
    { name: "hand_over_page", sections },
  ]);
  const head = panel([
    ...letterhead("hand_over", ["hand_over_lines.says", 1]),
    row(22, place([1, 12], "title", "Your water feature: how to run it and keep it")),
    row(
      16,
      place([1, 8], "text", said("hand_over_for", "~{customer}, {site}")),
      place([9, 2], "label", "Handed over on"),
      place([11, 2], "field", ""),
    ),
    row(
      16,
      place([1, 8], "text", said("hand_over_by", '~From {company}{JOINED("  ·  ",company_phone)}')),
      place([9, 2], "label", "Water care begun on"),
      place([11, 2], "field", ""),
    ),
  ]);
  const foot = panel([
    row(8),
    row(
      16,
      place(
        [1, 12],
        "small",
        "Shown and explained on site; a copy stays with the owner. Flows and settings written by hand count before those printed. What is said of care and seasons is general advice of the trade: what the makers write comes first.",
      ),
    ),
    row(
      26,
      place([1, 2], "label", "Owner"),
      place([3, 3], "field", ""),
      place([7, 2], "label", "For the contractor"),
      place([9, 4], "field", ""),
    ),
  ]);
  return { page: [head, flows.hand_over_page as Block, foot], working };
}
