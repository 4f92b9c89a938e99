import {
  calc,
  check,
  count,
  hours,
  lines,
  money,
  office,
  percent,
  text,
  yesno,
} from "../../../engine/template/index.js";

const learned = "From rillbook learn --take; blank where nothing was learned.";
const none = { zero: "not learned" } as const;

/** What the office's own built jobs say of how far man-hours run over a bid. Blank in a book that learned nothing. */
export const ownJobRules = lines("Overrun of our own jobs", {
  hours_half_over: office(percent, "Overrun in half of jobs", {
    optional: true,
    least: -0.9,
    most: 5,
    note: `P50 of man-hours against those bid. ${learned}`,
  }),
  hours_fifth_over: office(percent, "Overrun in one of five", {
    optional: true,
    least: -0.9,
    most: 5,
    note: `P80 of man-hours against those bid. ${learned}`,
  }),
  hours_over_jobs: office(count, "Built jobs behind the overrun", {
    optional: true,
    least: 0,
    most: 10000,
    whole: true,
    note: learned,
  }),
  hours_over_source: office(text, "Source of the overrun", { optional: true }),
  overrun_told_whole: check(
    "AND(ISBLANK(hours_half_over)=ISBLANK(hours_fifth_over),(hours_over_jobs>0)=NOT(ISBLANK(hours_half_over)),hours_fifth_over>=hours_half_over)",
    "P50, P80 and jobs of the overrun go together, P80 not under P50. Correct hours_half_over on sheet Office rules.",
    { label: "Overrun of own jobs incomplete", level: "look" },
  ),
});

/** What such jobs would make of this bid. It moves no price: a person sets the contingency. */
export const ownJobs = lines("This bid as our own jobs came out", {
  own_jobs_known: calc(
    yesno,
    "AND(described,hours_over_jobs>0,NOT(ISBLANK(hours_half_over)),NOT(ISBLANK(hours_fifth_over)),hours_fifth_over>=hours_half_over)",
    "Overrun is learned",
    { working: true },
  ),
  hours_p_fifty: calc(hours, "IF(own_jobs_known,man_hours*(1+hours_half_over),0[h])", "Man-hours, P50", {
    note: "Half of our built jobs stayed within, share for share.",
    ...none,
  }),
  hours_p_eighty: calc(hours, "IF(own_jobs_known,man_hours*(1+hours_fifth_over),0[h])", "Man-hours, P80", {
    strong: true,
    note: "Four of five stayed within.",
    ...none,
  }),
  labor_p_fifty: calc(money, "IF(own_jobs_known,labor_cost*(1+hours_half_over),0[$])", "Cost of labor, P50", {
    decimals: 0,
    ...none,
  }),
  labor_p_eighty: calc(money, "IF(own_jobs_known,labor_cost*(1+hours_fifth_over),0[$])", "Cost of labor, P80", {
    decimals: 0,
    note: "As if every hour of labor ran over alike. Machines on hire are not in it.",
    ...none,
  }),
  labor_with_overhead: calc(money, "labor_cost*(1+overhead_share)", "Labor with its overhead", { working: true }),
  contingency_given: calc(money, "ROUND(direct_cost*contingency_share,2)", "Contingency of this bid", {
    decimals: 0,
    note: "Without the allowance for the risks listed, which is for those.",
  }),
  contingency_to_eighty: calc(
    money,
    "IF(own_jobs_known,MAX(0[$],ROUND(labor_with_overhead*hours_fifth_over,2)),0[$])",
    "Contingency for P80",
    {
      strong: true,
      decimals: 0,
      note: "Pays for man-hours up to P80, with their overhead. Nothing is added by itself.",
    },
  ),
  contingency_share_to_eighty: calc(
    percent,
    "IF(direct_cost>0[$],ROUNDUP(ROUND(contingency_to_eighty/direct_cost,6),3),0)",
    "Contingency share for P80",
    { note: "What contingency_share on sheet Decisions would be then.", zero: "–" },
  ),
  own_jobs_said: calc(
    text,
    'IF(own_jobs_known,"Rests on "&FIXED(hours_over_jobs,0)&" built jobs"&IF(hours_over_jobs<5,", too few to tell much. ",". ")&hours_over_source,"")',
    "What it rests on",
    { working: true },
  ),
  contingency_covers_own: check(
    "OR(NOT(own_jobs_known),contingency_given>=contingency_to_eighty-0.005[$])",
    "Contingency {contingency_given|0} is under {contingency_to_eighty|0}, which covers man-hours as four of five own jobs needed. Raise contingency_share to {contingency_share_to_eighty} on sheet Decisions.",
    { label: "Contingency under own P80", level: "look" },
  ),
});
