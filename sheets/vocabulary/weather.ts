import { days, formula, number, percent } from "../../engine/template/index.js";

export const DAY_CHANCE = formula(
  "DAY_CHANCE",
  "Chance that a day is lost to rain, from the rain days of its month",
  { rain_days: days, month_length: days, share_lost: percent },
  percent,
  "share_lost*rain_days/month_length",
  "rain days are counted over calendar days: divided by the length of the month",
);

const binomial = "binomial distribution, days taken as independent";
const negativeBinomial = "negative binomial distribution, days taken as independent";

export const BINOMIAL_MEAN = formula(
  "BINOMIAL_MEAN",
  "Mean count of days lost among a number of days",
  { trials: number, chance: percent },
  number,
  "trials*chance",
  binomial,
);

export const BINOMIAL_DEVIATION = formula(
  "BINOMIAL_DEVIATION",
  "Standard deviation of the count of days lost among a number of days",
  { trials: number, chance: percent },
  number,
  "SQRT(trials*chance*(1-chance))",
  binomial,
);

export const WAIT_MEAN = formula(
  "WAIT_MEAN",
  "Mean count of days lost until a number of good days has come",
  { good: number, chance: percent },
  number,
  "good*chance/(1-chance)",
  negativeBinomial,
);

export const WAIT_DEVIATION = formula(
  "WAIT_DEVIATION",
  "Standard deviation of the days lost until a number of good days has come",
  { good: number, chance: percent },
  number,
  "SQRT(good*chance)/(1-chance)",
  negativeBinomial,
);

export const WAIT_CHANCE = formula(
  "WAIT_CHANCE",
  "Chance that a number of good days comes with at most so many days lost",
  { lost: number, good: number, chance: percent },
  percent,
  "BINOM.DIST(lost,lost+good,chance,TRUE)",
  negativeBinomial,
);

export const weatherFormulas = [DAY_CHANCE, BINOMIAL_MEAN, BINOMIAL_DEVIATION, WAIT_MEAN, WAIT_DEVIATION, WAIT_CHANCE];
