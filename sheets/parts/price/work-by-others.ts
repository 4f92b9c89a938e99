import {
  calc,
  check,
  date,
  input,
  money,
  prose,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";

/** Work that others quote. */
export const subcontracts = table(
  "subcontracts",
  "Work by others",
  { rows: 6, filled: "amount>0" },
  {
    work: input(text, "Work"),
    by: input(text, "By whom", { optional: true }),
    electrical: input(yesno, "Electrical work", {
      default: false,
      note: "Yes for the electrician's quote: it takes the place of material and hours of the circuit.",
    }),
    amount: input(money, "Amount quoted", { least: 0, most: 1e6 }),
    quoted_until: input(date, "Quote good until"),
    said: calc(text, 'work&IF(LEN(by)>0," ("&by&")","")', "On the papers"),
    quote_holds: check(
      "quoted_until>=bid_date",
      "{work}: the quote was good until {quoted_until}, and the bid is of {bid_date}. Ask for a new one.",
      { label: "Quote holds" },
    ),
  },
);

/** What may go wrong, each by three points, so that the allowance is reckoned and not guessed. */
export const risks = table(
  "risks",
  "What may cost more",
  {
    rows: 6,
    filled: "high>0",
    note: "Three points each: least, likely, most. The allowance covers all together with the confidence chosen.",
  },
  {
    risk: input(text, "What"),
    low: input(money, "Least", { default: 0, least: 0, most: 1e6 }),
    likely: input(money, "Likely", { least: 0, most: 1e6 }),
    high: input(money, "Most", { least: 0, most: 1e6 }),
    mean: calc(money, "PERT_MEAN(low,likely,high)", "Mean"),
    deviation: calc(money, "PERT_DEVIATION(low,high)", "Deviation"),
    in_order: check(
      "AND(low<=likely,likely<=high)",
      "{risk}: least, likely and most are not in order.",
      {
        label: "In order",
      },
    ),
  },
);

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
