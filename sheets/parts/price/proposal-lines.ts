import { bullet, bulletEachRow, eachRow, line, type PlacedLine } from "../../plan/page-line.js";
import type { ProposalSection } from "../../plan/proposal-page.js";
import { counted } from "../../vocabulary/counted.js";
import { drawTable } from "./draws.js";
import { optionTable } from "./options.js";
import { subcontracts } from "./work-by-others.js";

export const proposalOfPrice: readonly PlacedLine<ProposalSection>[] = [
  bullet(
    "protection",
    `{${counted("permits_paid", "permit", "permits")}} that the work needs ({TEXTJOIN(", ",TRUE,IF(electric_counted,"the circuit",""),IF(AND(permit_work="in our price",walls_to_permit>0),"walls",""),IF(permits_needed>0,"others",""))}), with {IF(permits_paid=1,"its fee","their fees")}.`,
    "permits_paid>0",
  ),
  bullet(
    "protection",
    `{${counted("engineer_designs", "engineer's design", "engineer's designs")}}, for walls and deep digs that need one.`,
    "engineer_designs>0",
  ),
  ...bulletEachRow("protection", subcontracts, "Included, done by others: {said}."),
  line("price", "The work as described: {price|2}.", "OR(options_taken>0,discount>0)"),
  ...eachRow("price", optionTable, '☒  Option taken: {description}, {IF(option_price>0,price_said,"no extra cost")}.', {
    when: "AND(LEN(description)>0,offered,taken)",
  }),
  line("price", "Discount: {discount|2}.", "discount>0"),
  ...eachRow(
    "price",
    optionTable,
    '☐  Option, not in the price: {description}, {IF(option_price>0,price_said&" more","no extra cost")}. To add it, initials: ________',
    {
      when: "AND(LEN(description)>0,offered,NOT(taken))",
    },
  ),
  ...bulletEachRow("price", drawTable, "{name}: {amount|2}, {share|0} of the price", {
    when: "AND(described,share>0)",
  }),
];
