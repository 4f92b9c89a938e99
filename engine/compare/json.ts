import { plainValue } from "../job/plain-value.js";
import type { ChangeOrder } from "./change-order.js";
import { type Change, type Comparison, difference } from "./compare.js";

/** A comparison in full, for programs. */
export function comparisonJson(comparison: Comparison, order: ChangeOrder): unknown {
  const { a, b, inputs, prices, headline, sections, price, figures, checks } = comparison;
  const side = ({ source, job, book, model }: Comparison["a"]) => ({
    source,
    job,
    template: model.template.name,
    version: model.template.version,
    units: model.system,
    book,
  });
  const { words, sum, lines, rest, heldBack, terms } = order;
  return {
    a: side(a),
    b: side(b),
    inputs: inputs.map((one) => ({ ...plain(one), reason: one.reason })),
    prices,
    headline: headline.map(plain),
    sections: sections.map(plain),
    ...(price === undefined ? {} : { price: plain(price) }),
    figures: figures.map(plain),
    checks,
    changeOrder: {
      ...{ head: Object.fromEntries(order.head), words, lines, sum, rest },
      ...(order.price === undefined ? {} : { price: plain(order.price) }),
      terms: terms.map(plain),
      ...(heldBack === undefined ? {} : { heldBack }),
    },
  };
}

function plain(change: Change): object {
  const { id, label, unit, old, new: now, oldShown, newShown } = change;
  const more = difference(change);
  return {
    ...{ id, label, unit, old: plainValue(old), new: plainValue(now), oldShown, newShown },
    ...(more === undefined ? {} : { difference: more }),
  };
}
