import {
  calc,
  check,
  count,
  decide,
  lines,
  money,
  office,
  percent,
  table,
  text,
} from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";

/** When the customer pays: the last draw is what is left, so that the draws make the price to the cent. */
export const drawTable = table(
  "draws",
  "Draws",
  {
    section: "Draws",
    rows: capacity.draws,
    filled: "share>0",
    data: [
      { name: "on signing, toward the material that we order", share: 0.3 },
      { name: "when the liner is in", share: 0.4 },
      { name: "when the water runs", share: 0.2 },
      { name: "on completion, after the walk-through with you", share: 0.1 },
    ],
    note: "The last draw is the price less those before it. Some states limit the first one: look yours up.",
  },
  {
    name: decide(text, "Due"),
    share: decide(percent, "Share", { again: true, least: 0, most: 1, decimals: 0 }),
    place: calc(count, (row) => String(row), "Row", { working: true }),
    amount: calc(money, "IF(place=last_draw,contract_price-above.so_far,ROUND(contract_price*share,2))", "Amount", {
      first: "IF(place=last_draw,contract_price,ROUND(contract_price*share,2))",
    }),
    so_far: calc(money, "above.so_far+amount", "So far", {
      first: "amount",
      blank: "0",
    }),
  },
);

export const drawChecks = lines("Totals of draws", {
  draws_total: calc(money, "SUM(draws.amount)", "Total of draws", { working: true }),
  draw_shares: calc(percent, "SUM(draws.share)", "Total of shares", { working: true }),
  first_draw: calc(money, "INDEX(draws.amount,1)", "First draw"),
  deposit_share: office(percent, "Deposit limit, of price", {
    section: "Price",
    default: 1,
    least: 0,
    most: 1,
    decimals: 0,
    note: "Where a state limits the first payment. California: 10% or $1,000, the lesser (Business and Professions Code 7159.5, from memory).",
  }),
  deposit_most: office(money, "Deposit limit, amount", { section: "Price", optional: true, least: 0, most: 1e6 }),
  deposit_allowed: calc(
    money,
    "MIN(deposit_share*contract_price,IF(ISBLANK(deposit_most),contract_price,deposit_most))",
    "Deposit allowed",
    { working: true },
  ),
  deposit_held: check(
    "first_draw<=deposit_allowed+0.005[$]",
    "The first draw is {first_draw}, but the office's rule allows {deposit_allowed}. Lower its share in draws on sheet Decisions.",
    { label: "Deposit over the limit" },
  ),
  draws_add_up: check(
    "AND(ABS(draw_shares-1)<0.00001,MIN(draws.amount)>=0)",
    "The shares of the draws make {draw_shares}, not 100%. Correct them in draws on sheet Decisions.",
    { label: "Draws not 100%" },
  ),
  draws_make_price: check(
    "ABS(draws_total-contract_price)<0.005[$]",
    "The draws make {draws_total}, but the price is {contract_price}. Fill draws on sheet Decisions from the first row, without a gap.",
    { label: "Draws miss the price" },
  ),
});
