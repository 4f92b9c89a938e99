import { part } from "../part.js";
import { pricesBlocks } from "./prices.js";

export const book = part("Office book", "What the bid takes from the office book.", {
  blocks: { Prices: [pricesBlocks] },
});
