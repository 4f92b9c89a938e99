import type { Example } from "../template/template.js";
import type { Context } from "./context.js";

/** Names to show where no template brings any. */
const anyTrade: Example = {
  table: "rows",
  input: "rows.length",
  typed: "3 ft 6 in",
  result: "rows.cost",
  figure: "total_cost",
};

/** Names of the first template, for the examples in help texts. */
export const exampleOf = ({ templates }: Pick<Context, "templates">): Example =>
  templates[0]?.example ?? anyTrade;
