import { extend, input, quantities } from "rillbook";
import fence from "./fence.mjs";

/** The fence of an office that passes its permits on. Invented. */
export default extend(fence, {
  name: "our-fence",
  version: 1,
  cells: { Price: { permit: input(quantities.money, "Permit", { default: 120, least: 0 }) } },
  change: { total_cost: (formula) => `${formula}+permit` },
});
