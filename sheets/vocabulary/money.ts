import { formula, hourlyRate, money, number, percent } from "../../engine/template/index.js";

const identity = "from the definitions: markup = profit / cost, margin = profit / price";

export const MARKUP_FROM_MARGIN = formula(
  "MARKUP_FROM_MARGIN",
  "Markup on cost that yields a margin on price",
  { margin: percent },
  percent,
  "margin/(1-margin)",
  identity,
);

export const MARGIN_FROM_MARKUP = formula(
  "MARGIN_FROM_MARKUP",
  "Margin on price that a markup on cost yields",
  { markup: percent },
  percent,
  "markup/(1+markup)",
  identity,
);

export const PRICE_AT_MARGIN = formula(
  "PRICE_AT_MARGIN",
  "Price at which the profit is a share of the price",
  { cost: money, margin: percent },
  money,
  "cost/(1-margin)",
  identity,
);

export const PRICE_AT_MARKUP = formula(
  "PRICE_AT_MARKUP",
  "Price at which the profit is a share of the cost",
  { cost: money, markup: percent },
  money,
  "cost*(1+markup)",
  identity,
);

export const BURDENED_RATE = formula(
  "BURDENED_RATE",
  "What an hour of a person costs: wage with taxes, insurance and paid leave",
  { wage: hourlyRate, burden: percent },
  hourlyRate,
  "wage*(1+burden)",
  "Remodeling magazine, How much does an employee cost",
);

export const BUY_IN_PACKS = formula(
  "BUY_IN_PACKS",
  "The whole packs that hold a quantity, counted in units",
  { needed: number, pack: number },
  number,
  "WHOLE_UP(needed/pack)*pack",
  "arithmetic; the rounding to six decimals of a pack keeps 110.0000000001 from becoming 111",
);

const pert = "program evaluation and review technique (PERT), three-point estimate";

export const PERT_MEAN = formula(
  "PERT_MEAN",
  "Mean of a three-point estimate",
  { low: money, likely: money, high: money },
  money,
  "(low+4*likely+high)/6",
  pert,
);

export const PERT_DEVIATION = formula(
  "PERT_DEVIATION",
  "Standard deviation of a three-point estimate",
  { low: money, high: money },
  money,
  "(high-low)/6",
  pert,
);

export const moneyFormulas = [
  MARKUP_FROM_MARGIN,
  MARGIN_FROM_MARKUP,
  PRICE_AT_MARGIN,
  PRICE_AT_MARKUP,
  BURDENED_RATE,
  BUY_IN_PACKS,
  PERT_MEAN,
  PERT_DEVIATION,
];
