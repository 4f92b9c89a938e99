import { part } from "../part.js";
import { pageLines } from "./page-lines.js";
import { purchase } from "./purchase.js";
import { purchaseList } from "./purchase-list.js";
import { saidLines } from "./said.js";

export const papers = part("Papers", "The pages handed out, and the lists they are made from.", {
  blocks: {
    Proposal: [(all) => pageLines("proposal", "Our offer", "customer", all.proposal).page],
    Orders: [(all) => purchase(purchaseList(all))],
    Crew: [(all) => pageLines("crew", "Work to do", "crew", all.crew).page],
    Wording: [
      saidLines,
      (all) => pageLines("proposal", "Our offer", "customer", all.proposal).working,
      (all) => pageLines("crew", "Work to do", "crew", all.crew).working,
      purchaseList,
    ],
  },
});
