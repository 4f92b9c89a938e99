import { calc, check, money, office, text } from "../../../engine/template/index.js";
import type { Cells } from "../added.js";
import { practice } from "../rates.js";

/** What a stone comes to. */
export const pricePerStone: Cells = {
  cost_per_stone: calc(money, "IF(stones_counted>0,total_cost/stones_counted,0)", "Cost per stone", { decimals: 0 }),
  price_per_stone: calc(money, "IF(stones_counted>0,price/stones_counted,0)", "Price per stone", { decimals: 0 }),
  price_per_stone_least: office(money, "Least price per stone", {
    section: "Price",
    default: 1000,
    least: 0,
    most: 1000000,
    source: `${practice}: put in what the office's own finished jobs came to`,
  }),
  price_per_stone_most: office(money, "Most price per stone", {
    section: "Price",
    default: 12000,
    least: 0,
    most: 1000000,
    source: `${practice}: put in what the office's own finished jobs came to`,
  }),
  stone_price_band: calc(text, "~{price_per_stone_least|0} to {price_per_stone_most|0}", "Band of price per stone"),
  stone_price_in_band: check(
    "OR(price_per_stone<=0,AND(price_per_stone>=price_per_stone_least,price_per_stone<=price_per_stone_most))",
    "The price comes to {price_per_stone|0} a stone, outside {price_per_stone_least|0} to {price_per_stone_most|0}. Look for a quantity left out or typed twice.",
    { label: "Price per stone unusual", level: "look" },
  ),
};
