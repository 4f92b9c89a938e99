import { RillbookError } from "../errors.js";
import { suggestion } from "../formula/suggest.js";
import type { TraceNode } from "../trace/node.js";
import type { Bid } from "./bid.js";

/**
 * Shows where a figure comes from: its formula in names and in numbers, and so on for its parts, down to
 * inputs with their origin and published figures with their source.
 *
 * @param name a cell (`price`, `runs.posts[2]`) or a whole column (`runs.posts`)
 * @param depth levels of formulas to open
 */
export async function trace(bid: Bid, name: string, depth = 2): Promise<TraceNode> {
  const { traceNamed } = await import("../trace/trace-named.js");
  const node = traceNamed(bid, name, depth);
  if (node !== undefined) return node;
  throw new RillbookError(
    "name-unknown",
    `The name "${name}" is neither a cell nor a column of template ${bid.model.template.name}.${suggestion(name, [...bid.model.byId.keys()])}`,
  );
}

/** A trace as text, as `rillbook trace` tells it; `width` characters to a line. */
export async function traceText(node: TraceNode, width = 100): Promise<string> {
  const { traceText: text } = await import("../trace/text.js");
  return text(node, width);
}
