import { type SheetDeclaration, sheet } from "../../../engine/template/index.js";
import { crewLines } from "./crew-lines.js";
import { pageLines } from "./page-lines.js";
import { proposalLines } from "./proposal-lines.js";
import { purchaseSheet, purchaseWorking } from "./purchase.js";
import { linerOrders, lipSaid, saidLines, stoneSaid } from "./said.js";

const proposal = pageLines("proposal", "Our offer", "customer", proposalLines);
const crew = pageLines("crew", "Work to do", "crew", crewLines);

/** The pages handed out: to the customer, to suppliers, to the crew; last, the lists they are made from. */
export const paperSheets: readonly SheetDeclaration[] = [
  sheet(
    "Proposal",
    "What we offer to build, for what price, and what to know before.",
    [proposal.page],
    {
      portrait: true,
      handout: true,
      page: true,
    },
  ),
  purchaseSheet,
  sheet("Crew", "What to set out, dig, cut, pipe, open and lift.", [crew.page], {
    portrait: true,
    handout: true,
    page: true,
  }),
  sheet(
    "Wording",
    "The lines that the pages choose from: those not wanted are left out there.",
    [
      saidLines,
      linerOrders,
      stoneSaid,
      lipSaid,
      ...proposal.working,
      ...crew.working,
      purchaseWorking,
    ],
    { page: true, printed: false },
  ),
];
