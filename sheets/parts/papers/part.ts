import { wordFormulas } from "../../vocabulary/words.js";
import { part } from "../part.js";
import { purchaseList } from "./order-list.js";
import { purchase } from "./orders.js";
import { pageLines } from "./page-lines.js";
import { saidLines } from "./said.js";

export const papers = part("Papers", "The pages handed out, and the lists they are made from.", {
  formulas: wordFormulas,
  blocks: {
    Proposal: [(all) => pageLines("proposal", "Proposal", "customer", all.proposal).page],
    Orders: [(all) => purchase(purchaseList(all))],
    Crew: [(all) => pageLines("crew", "Work to do", "crew", all.crew).page],
    Wording: [
      saidLines,
      (all) => pageLines("proposal", "Proposal", "customer", all.proposal).working,
      (all) => pageLines("crew", "Work to do", "crew", all.crew).working,
      purchaseList,
    ],
  },
});
