import { columnOf, formula, hours, number, percent, precise, text } from "../../engine/template/index.js";
import { methods } from "../tables/work-methods.js";

/** The model is the normal one with its conjugate prior, on the logarithm of a rate. */
const normalModel =
  "Gelman et al., Bayesian Data Analysis, 3rd edition, section 3.3: normal data with a conjugate prior (from memory)";
const tTables = "NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2, t table (from memory)";

const LOG_SPREAD = formula(
  "LOG_SPREAD",
  "A spread of so many per cent on the scale of logarithms",
  { spread: percent },
  number,
  "LN(1+spread)",
  "definition",
);

const POSTERIOR_VARIANCE = formula(
  "POSTERIOR_VARIANCE",
  "Variance between jobs: that of the prior and that of the jobs, each by what it counts as",
  { spread: percent, prior_jobs: number, squares: number, worth: number, center: number, freedom: number },
  number,
  "MAX(0,prior_jobs*LOG_SPREAD(spread)^2+squares-worth*center^2)/MAX(1,freedom)",
  normalModel,
);

const T_WITHIN = formula(
  "T_WITHIN",
  "How many standard errors to either side hold a share of Student's distribution; degrees of freedom rounded down",
  { share: percent, freedom: number },
  number,
  "TINV(MIN(0.999,MAX(0.001,1-share)),MAX(1,ROUNDDOWN(ROUND(freedom,6),0)))",
  tTables,
);

const ROUNDED_RATE = formula(
  "ROUNDED_RATE",
  "A rate to three significant digits, as it goes into the office book",
  { rate: number },
  precise,
  "IF(rate>0,ROUND(rate,2-INT(ROUND(LOG10(MAX(rate,0.000000001)),9))),0)",
  "definition",
);

const RATE_UNITS = formula(
  "RATE_UNITS",
  "How many units of the book one unit of a job makes; 0 where they measure different things or are not known",
  { ...{ kinds: columnOf(text), sizes: columnOf(precise), names: columnOf(text) }, own: text, others: text },
  number,
  "IF(AND(LISTED(names,own),LISTED(names,others)),UNITS_IN(kinds,sizes,names,own,others),0)",
  "definition",
);

const SIZE_WEIGHT = formula(
  "SIZE_WEIGHT",
  "What a task of so many man-hours counts against a very long one: its variance is that between jobs and that of a short task",
  { hours, half: hours },
  precise,
  "hours/MAX(0.000001[h],hours+half)",
  "definition: 1 / (1 + half / hours)",
);

const WAY = formula(
  "WAY",
  "A number for a rate and a method of work",
  { place: number, method: text },
  number,
  `place*10+${methods.map((method, i) => `${i + 1}*(method="${method}")`).join("+")}`,
  "definition",
);

const WILSON = formula(
  "WILSON",
  "An end of Wilson's interval of a share of so many cases, that many normal standard deviations off",
  { share: percent, cases: number, z: number },
  percent,
  "(share+z^2/(2*MAX(1,cases))+z*SQRT(share*(1-share)/MAX(1,cases)+z^2/(4*MAX(1,cases)^2)))/(1+z^2/MAX(1,cases))",
  "NIST/SEMATECH e-Handbook of Statistical Methods, section 7.2.4.1 (from memory)",
);

/** The mathematics of learned rates. */
export const learningFormulas = [
  LOG_SPREAD,
  POSTERIOR_VARIANCE,
  T_WITHIN,
  ROUNDED_RATE,
  RATE_UNITS,
  WILSON,
  SIZE_WEIGHT,
  WAY,
] as const;
