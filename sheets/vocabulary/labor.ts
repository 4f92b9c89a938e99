import { count, formula, hours, number, percent, text, yesno } from "../../engine/template/index.js";

const HOURS_AT = formula(
  "HOURS_AT",
  "Hours that a quantity takes at units an hour; none for a rate that is missing, which a check tells",
  { quantity: number, rate: number },
  hours,
  "IF(rate>0,quantity/MAX(rate,0.000001),0)*1[h]",
  "definition",
);

const MEAN_WAGE = formula(
  "MEAN_WAGE",
  "Mean wage of a crew of one foreman and laborers",
  { foreman: number, laborer: number, people: count },
  number,
  "(foreman+(MAX(people,1)-1)*laborer)/MAX(people,1)",
  "arithmetic",
);

const BARROW = formula(
  "BARROW",
  "What a slope and steps on the way make of the time with a barrow; per cent for each 10 % of slope, and each step",
  { by_hand: yesno, slope: percent, steps: count, each_tenth: number, each_step: number },
  number,
  "IF(by_hand,1+(slope/10%*each_tenth+steps*each_step)/100,1)",
  "definition",
);

const COMPACTS = formula(
  "COMPACTS",
  "1 for the rate of work that a compactor is needed for; row by row",
  { code: text },
  number,
  '1-(code<>"berm")*(code<>"backfill")*(code<>"wall-base")',
  "definition: berms, backfill and the bases of walls",
);

/** Work: hours from rates, what an hour of a crew costs. */
export const laborFormulas = [HOURS_AT, MEAN_WAGE, BARROW, COMPACTS] as const;
