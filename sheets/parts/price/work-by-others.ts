import { calc, check, date, decide, lines, money, prose, table, text, yesno } from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";

/** Work that others quote. */
export const subcontracts = table(
  "subcontracts",
  "Work by others",
  { section: "Work by others", rows: capacity.subcontracts, filled: "amount>0" },
  {
    work: decide(text, "Work"),
    by: decide(text, "Contractor", { again: true, optional: true }),
    electrical: decide(yesno, "Electrical work", {
      default: false,
      note: "Yes for the electrician's quote: it takes the place of material and hours of the circuit.",
    }),
    amount: decide(money, "Amount quoted", { again: true, least: 0, most: 1e6 }),
    quoted_until: decide(date, "Quote good until"),
    said: calc(text, 'work&IF(LEN(by)>0," ("&by&")","")', "In words", { working: true }),
    quote_holds: check(
      "quoted_until>=bid_date",
      "{work}: the quote was good until {quoted_until}; the bid is dated {bid_date}. Enter a new quote in subcontracts on sheet Decisions.",
      { label: "Quote expired" },
    ),
  },
);

/** What may go wrong, each by three points, so that the allowance is calculated and not guessed. */
export const risks = table(
  "risks",
  "Risks",
  {
    section: "Risks",
    rows: capacity.risks,
    filled: "high>0",
    note: "Three points each: least, likely, most. The allowance covers all of them together, with the confidence chosen.",
  },
  {
    risk: decide(text, "What"),
    low: decide(money, "Least", { default: 0, least: 0, most: 1e6 }),
    likely: decide(money, "Likely", { least: 0, most: 1e6 }),
    high: decide(money, "Most", { least: 0, most: 1e6 }),
    mean: calc(money, "PERT_MEAN(low,likely,high)", "Mean"),
    deviation: calc(money, "PERT_DEVIATION(low,high)", "Deviation"),
    in_order: check(
      "AND(low<=likely,likely<=high)",
      "{risk}: least, likely and most are not in order. Correct them in risks on sheet Decisions.",
      {
        label: "Points out of order",
      },
    ),
  },
);

/** An order needs a name: a quote without one is nobody's word. */
export const outsideChecks = lines("Checks of work by others", {
  contractors_named: check(
    'SUMPRODUCT((subcontracts.amount>0)*(subcontracts.by=""))=0',
    "A quote for work by others names no contractor: enter it in subcontracts.by on sheet Decisions.",
    { label: "Contractor not named", level: "look" },
  ),
});

export const outsideInWords = prose("In words", {
  subcontracts_said: calc(
    text,
    'IF(SUM(subcontracts.amount)>0,"By others: "&TEXTJOIN("; ",TRUE,subcontracts.said)&".","No work by others.")',
    "Work by others",
  ),
  risks_said: calc(
    text,
    'IF(SUM(risks.high)>0,"Allowed for: "&TEXTJOIN("; ",TRUE,risks.risk)&".","No risk is listed.")',
    "Risks",
  ),
});
