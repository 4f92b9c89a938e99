import { wordFormulas } from "../../vocabulary/words.js";
import type { Whole } from "../brought.js";
import { part } from "../part.js";
import { purchaseList } from "./order-list.js";
import { purchase } from "./orders.js";
import { pageLines } from "./page-lines.js";
import { saidLines } from "./said.js";

const proposal = (all: Whole) =>
  pageLines("proposal", "Proposal", "customer", all.proposal, {
    after: all.proposalOpening,
    charts: all.proposalDrawings,
  });
const crew = (all: Whole) => pageLines("crew", "Work to do", "crew", all.crew);

export const papers = part("Papers", "The pages handed out, and the lists they are made from.", {
  formulas: wordFormulas,
  blocks: {
    Proposal: [(all) => proposal(all).page],
    Orders: [(all) => purchase(purchaseList(all))],
    Crew: [(all) => crew(all).page],
    Wording: [saidLines, (all) => proposal(all).working, (all) => crew(all).working, purchaseList],
  },
});
