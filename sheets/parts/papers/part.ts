import { unprinted } from "../../../engine/template/index.js";
import { wordFormulas } from "../../vocabulary/words.js";
import type { Whole } from "../brought.js";
import { part } from "../part.js";
import { contractTerms, termLines, terms } from "./contract.js";
import { crew } from "./crew.js";
import { groupFormulas } from "./grouped-lines.js";
import { handOver } from "./hand-over.js";
import { orderFormulas, purchaseList } from "./order-list.js";
import { orderChoices, orders, ordersHeld, ordersSaid } from "./orders.js";
import { proposal } from "./proposal.js";
import { saidLines } from "./said.js";

const lists = (all: Whole) => [...proposal(all).working, ...crew(all).working, ...handOver(all).working];

export const papers = part("Papers", "The pages handed out, and the lists they are made from.", {
  section: "Contract",
  formulas: [...wordFormulas, ...groupFormulas, ...orderFormulas],
  blocks: {
    Job: [orderChoices],
    Proposal: [(all) => proposal(all).page],
    Orders: [orders],
    Crew: [(all) => crew(all).page],
    "Hand-over": [(all) => handOver(all).page],
    Price: [unprinted(contractTerms)],
    Materials: [unprinted(ordersHeld)],
    Wording: [saidLines, terms, lists, purchaseList, ordersSaid],
  },
  proposal: termLines,
});
