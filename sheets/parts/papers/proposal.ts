import { type Block, calc, count, days, lines, panel, place, row, text } from "../../../engine/template/index.js";
import type { ProposalSection } from "../../plan/proposal-page.js";
import { proposalPage } from "../../plan/proposal-page.js";
import type { Whole } from "../brought.js";
import { letterhead } from "./letterhead.js";
import { pageLines } from "./page-lines.js";
import { saidTo } from "./said-to.js";

const said = saidTo("customer");

/** Sentences of the head, in parts that a formula can hold. */
export const proposalSaid = ({ cellsAt }: Pick<Whole, "cellsAt">) =>
  lines("Wording of the proposal", {
    proposal_title: calc(
      text,
      '"Proposal"&JOINED(" no. ",proposal_number)&JOINED(", revision ",revision)',
      "Proposal, its number and revision",
    ),
    lines_in_use: calc(count, "SUMPRODUCT((pipe_lines.bore>0)*1)", "Lines in use"),
    days_on_site: calc(days, "IF(rain_known,days_allowed,work_days)", "Days on site, as said"),
    valves_said: calc(text, 'IF(lines_in_use>1,"a valve on each line","a valve")', "Valves, in words"),
    ...cellsAt("proposal said"),
  });

/** The letterhead, what the customer will see and hear, and the three figures asked about first. */
const headOf = (opening: number) =>
  panel([
    ...letterhead("proposal", ["proposal_lines.says", opening]),
    row(
      22,
      place([1, 5], "title", said("proposal_head", "proposal_title")),
      place(
        [6, 7],
        "right",
        said("proposal_dates", 'IF(ISBLANK(bid_date),"",bid_date_said&"; good until "&bid_good_until_said)'),
      ),
    ),
    row(
      16,
      place([1, 7], "text", said("proposal_for", "~For {customer}, {site}")),
      place([8, 5], "right", said("proposal_by", "~Prepared by {estimator}")),
    ),
    row(20, place([1, 12], "strong", said("proposal_job", "job_title"))),
    row(
      20,
      place([1, 8], "heading", "What you will see and hear"),
      place([9, 4], "photo", "Place for a photo or sketch. Nothing prints here while there is none.", { down: 5 }),
    ),
    row(3),
    row(62, place([1, 8], "text", said("proposal_see", "see_and_hear"))),
    row(28, place([1, 8], "text", said("proposal_wish", 'IF(LEN(look_wanted)>0,"You asked for: "&look_wanted,"")'))),
    row(6),
    row(
      26,
      place([1, 4], "figure", said("proposal_flow", "~{flow_about|0}")),
      place([5, 4], "figure", said("proposal_cost", "~about {energy_month_said}")),
      place([9, 4], "figure", said("proposal_days", "~{days_on_site|0|bare} working days")),
    ),
    row(
      28,
      place([1, 4], "caption", said("proposal_over", '"over "&fed_said&", always the same water"')),
      place(
        [5, 4],
        "caption",
        said("proposal_power", "~for power while it runs, {hours_a_day|0} at {energy_rate_said}"),
      ),
      place(
        [9, 4],
        "caption",
        said(
          "proposal_rain",
          'IF(rain_known,"on site, usual rain of the season allowed for","of work on site, rain not counted")',
        ),
      ),
    ),
  ]);

// what is built and its price stand on one page; the next one says how it is paid for, and is signed
const price = panel([
  row(8),
  row(
    34,
    place(
      [1, 7],
      "beside",
      said(
        "proposal_priced",
        '"The price for all of this, sales tax on material included"&IF(ABS(contract_price-price)<0.005[$],".",", with what is listed on page 2.")',
      ),
    ),
    place([8, 5], "price", said("proposal_price", 'IF(described,contract_price_said,"no price yet")')),
  ),
]);

// a page break holds behind a row that is seen
const next = panel([row(4)], { newPage: true });

/** Where both sign. */
const signed = panel([
  row(
    20,
    place(
      [1, 12],
      "text",
      said(
        "proposal_call",
        '~Thank you for asking us. For questions, call {estimator}{JOINED(" at ",company_phone)}{JOINED(" or write to ",company_email)}.',
      ),
    ),
  ),
  row(20, place([1, 12], "heading", "Agreed")),
  row(3),
  row(14, place([1, 12], "small", "Signed by both, this proposal with its terms is the contract. Keep a copy.")),
  row(
    24,
    place([1, 2], "label", "Customer"),
    place([3, 5], "field", ""),
    place([9, 1], "label", "Date"),
    place([10, 3], "field", ""),
  ),
  row(
    24,
    place([1, 2], "label", "Contractor"),
    place([3, 5], "field", ""),
    place([9, 1], "label", "Date"),
    place([10, 3], "field", ""),
  ),
]);

/** What the customer reads and signs. */
export function proposal(all: Whole): { readonly page: readonly Block[]; readonly working: readonly Block[] } {
  const scope: readonly ProposalSection[] = ["scope", "lights", "supply", "protection", "trees", "storm"];
  const rest = proposalPage.map(({ name }) => name).filter((name) => name !== "opening" && !scope.includes(name));
  const { working, flows } = pageLines("proposal", "Proposal", "customer", all.proposal, [
    { name: "proposal_scope", sections: scope },
    { name: "proposal_rest", sections: rest },
  ]);
  const head = headOf(all.proposal.filter(({ section }) => section === "opening").length);
  return {
    page: [
      head,
      ...all.proposalDrawings,
      ...flow(flows, "proposal_scope"),
      price,
      next,
      ...flow(flows, "proposal_rest"),
      signed,
    ],
    working: [proposalSaid(all), ...working],
  };
}

const flow = (flows: Readonly<Record<string, Block>>, name: string): Block[] => [flows[name] as Block];
