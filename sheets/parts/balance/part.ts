import { part } from "../part.js";
import { balanceBlocks } from "./balance.js";

export const balance = part("Balance", "How the pump's flow divides between the outlets.", {
  blocks: { Balance: balanceBlocks },
});
