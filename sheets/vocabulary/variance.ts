import { date, days, formula, hourlyRate, hours, money, number, percent, text } from "../../engine/template/index.js";

const standardCosting =
  "standard costing: hours of the actual output at the planned rate stand between plan and actual (efficiency and rate variance of labor)";

const QUANTITY_EFFECT = formula(
  "QUANTITY_EFFECT",
  "Hours more because more was done, at the hours planned for a unit",
  { planned: number, hours, done: number },
  hours,
  "IF(planned>0,(done-planned)*hours/planned,0[h])",
  standardCosting,
);

const RATE_EFFECT = formula(
  "RATE_EFFECT",
  "Hours more because a unit took longer, over what was really done: with the effect of quantity it is the whole difference",
  { planned: number, hours, done: number, taken: hours },
  hours,
  "IF(planned>0,taken-done*hours/planned,0[h])",
  standardCosting,
);

const PRICE_EFFECT = formula(
  "PRICE_EFFECT",
  "Cost more because an hour cost more, over the hours really worked",
  { planned: hourlyRate, paid: hourlyRate, taken: hours },
  money,
  "(paid-planned)*taken",
  standardCosting,
);

const HOURS_READ = formula(
  "HOURS_READ",
  "A difference of hours as it is shown: what would be read as 0.0 is none, since a sign before a zero says nothing",
  { more: hours },
  hours,
  "IF(ABS(more)<0.05[h],0[h],more)",
  "definition",
);

const MONEY_READ = formula(
  "MONEY_READ",
  "A difference of cost as it is shown in whole dollars: less than half a dollar is none",
  { more: money },
  money,
  "IF(ABS(more)<0.5[$],0[$],more)",
  "definition",
);

const SHARE_READ = formula(
  "SHARE_READ",
  "A difference in percent as it is shown: what would be read as 0.0 % is none",
  { more: percent },
  percent,
  "IF(ABS(more)<0.0005,0,more)",
  "definition",
);

const HOURS_MORE_SAID = formula(
  "HOURS_MORE_SAID",
  "A difference of hours against the plan, in words",
  { more: number },
  text,
  'IF(ABS(more)<0.05,"as planned",FIXED(ABS(more),1)&IF(more<0," h less"," h more")&" than planned")',
  "definition",
);

const HOURS_PARTS_SAID = formula(
  "HOURS_PARTS_SAID",
  "What a difference of hours comes from, in words",
  { by_quantity: hours, by_rate: hours },
  text,
  // a zero is added, since a small negative number is rounded to one with a sign
  'FIXED(ROUND(by_quantity/1[h],1)+0,1)&" by quantity, "&FIXED(ROUND(by_rate/1[h],1)+0,1)&" by rate"',
  "definition",
);

const DAYS_AGAINST = formula(
  "DAYS_AGAINST",
  "Days told against those of the plan, in words",
  { what: text, taken: days, against: text, planned: days },
  text,
  'what&IF(ISBLANK(taken),": not told.",": "&FIXED(taken/1[days],0)&", "&against&" "&FIXED(planned/1[days],0)&".")',
  "definition",
);

const GIVEN_MORE = formula(
  "GIVEN_MORE",
  "A sum over its plan; none where it is not told",
  { told: money, planned: money },
  money,
  "IF(ISBLANK(told),0[$],told-planned)",
  "definition",
);

const DAY_OF = formula(
  "DAY_OF",
  "A day that was told, in words, behind what happened on it; nothing where it was not told",
  { what: text, day: date },
  text,
  'IF(ISBLANK(day),"",what&DATE_SAID(day))',
  "definition",
);

const MONEY_LEFT_SAID = formula(
  "MONEY_LEFT_SAID",
  "A sum that is not told, in words; nothing where all of it is",
  { what: text, left: money },
  text,
  'IF(left>0.5[$],what&" of $"&FIXED(left/1[$],0),"")',
  "definition",
);

const FLOW_MEANS = formula(
  "FLOW_MEANS",
  "What a flow over or under the balance says of a line, in words; within a tenth, as near as valves are set",
  { off: percent },
  text,
  'IF(ABS(off)<=0.1,"Valve as planned.",IF(off>0,"More than balanced: close its valve a little.","Less than balanced: open its valve; look for air and kinks."))',
  "common practice, no source",
);

const DEPTH_MEANS = formula(
  "DEPTH_MEANS",
  "What a depth over or under the law for shallow water says of a run, in words",
  { off: percent },
  text,
  'IF(ABS(off)<=0.15,"As the law gives it.",IF(off>0,"Deeper: rougher, narrower or flatter than planned. Look at the banks.","Shallower: smoother, wider or steeper than planned."))',
  "common practice, no source",
);

const SMOOTHNESS_MEANS = formula(
  "SMOOTHNESS_MEANS",
  "What the metered flow says of the main, in words: 1 not metered, 2 too little friction, 3 none left, 4 found",
  { state: number, found: number, planned: number },
  text,
  'IF(state<2,"C of the main is told once every running line is metered.",IF(state<3,"Friction of the main is under 5 % of the head: C cannot be told from this.",IF(state<4,"More flows than the smoothest main lets through: check meter and pump curve.","C of "&FIXED(found,0)&" would give the metered flow; the plan has "&FIXED(planned,0)&".")))',
  "definition",
);

const LEVEL_MEANS = formula(
  "LEVEL_MEANS",
  "What the level of the basin says, in words",
  { higher: number, unit: text },
  text,
  'FIXED(ABS(higher),1)&" "&unit&IF(higher<0," lower than planned: more water is out in the stream."," higher than planned: less water is out in the stream.")',
  "definition",
);

/** Plan against actual: what each difference comes from, and how it is said. */
export const varianceFormulas = [
  QUANTITY_EFFECT,
  RATE_EFFECT,
  PRICE_EFFECT,
  HOURS_READ,
  MONEY_READ,
  SHARE_READ,
  HOURS_MORE_SAID,
  HOURS_PARTS_SAID,
  DAYS_AGAINST,
  GIVEN_MORE,
  DAY_OF,
  MONEY_LEFT_SAID,
  FLOW_MEANS,
  DEPTH_MEANS,
  SMOOTHNESS_MEANS,
  LEVEL_MEANS,
] as const;
