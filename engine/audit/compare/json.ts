import { plainValue } from "../trace/written.js";
import { changeOrderOf } from "./change-order.js";
import { type Change, type Comparison, difference } from "./compare.js";

/** A comparison in full, for programs. */
export function comparisonJson(comparison: Comparison): unknown {
  const { a, b, inputs, prices, headline, sections, price, figures, checks } = comparison;
  const side = ({ source, job, book, model }: Comparison["a"]) => ({
    source,
    job,
    template: model.template.name,
    version: model.template.version,
    units: model.system,
    book,
  });
  const { words, sum } = changeOrderOf(comparison);
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
    changeOrder: { words, sum },
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
