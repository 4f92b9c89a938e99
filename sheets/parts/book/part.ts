import { part } from "../part.js";
import { pricesBlocks } from "./prices.js";

export const book = part("Price book", "What the bid takes from the office's price book.", {
  blocks: { Prices: [pricesBlocks] },
});
