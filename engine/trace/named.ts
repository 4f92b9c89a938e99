import { inlinerOf, treeValue } from "../evaluate/tree-value.js";
import type { NamedFormula, SettledMeasure } from "../formula/named-formula.js";
import type { Tree } from "../formula/tree.js";
import type { Value } from "../formula/value.js";
import { plainValue } from "../job/plain-value.js";
import type { Cell } from "../template/model.js";
import type { TraceNode } from "./node.js";
import { shownMeasure, styleOfMeasure } from "./number-style.js";
import { inNames, inNumbers } from "./numbers.js";
import { type CallPart, partsOfFormula } from "./parts.js";
import type { Traced } from "./traced.js";

/**
 * A call of a named formula: first by its name and arguments, and where the depth allows its body,
 * in parameters and in numbers, with the named formulas that it calls in turn.
 */
export function formulaNode(
  job: Traced,
  home: Cell,
  { call, args: outer }: CallPart,
  depth: number,
  opened: Set<string>,
): TraceNode {
  const { model, values } = job;
  const own = model.formulas.get(call.name) as NamedFormula;
  const value = treeValue(model, home, call, values, outer);
  // look-ups, whose measures a call settles, are shown by the cell that they find
  const result = own.result as SettledMeasure;
  const style = styleOfMeasure(result, model.system, value);
  const show = (one: Value) => shownMeasure(model, home, one, result, style);
  const args = new Map(
    own.parameters.map(({ name }, i) => [
      name,
      treeValue(model, home, call.args[i] as Tree, values, outer),
    ]),
  );
  const styles = new Map(
    own.parameters.map(({ name, measure }) => [
      name,
      styleOfMeasure(measure as SettledMeasure, model.system, args.get(name) ?? null),
    ]),
  );
  const name = inNames(call);
  const node: TraceNode = {
    kind: "formula",
    name,
    label: own.meaning,
    value: plainValue(value),
    unit: style.unit,
    shown: show(value),
    source: own.source,
    parameters: own.parameters.map((parameter, i) => ({
      name: parameter.name,
      argument: inNames(call.args[i] as Tree),
      value: plainValue(args.get(parameter.name)),
      unit: styles.get(parameter.name)?.unit ?? "",
    })),
    parts: [],
    state: "closed",
  };
  // with other arguments the same words mean another call
  const key = `${name} ${[...args.values()].join(" ")}`;
  if (opened.has(key)) return { ...node, state: "above" };
  if (depth <= 0) return node;
  opened.add(key);
  const body = inlinerOf(model).checkedBody(own);
  const written = inNumbers(model, home, body, { values, args, styles }, show);
  const parts = partsOfFormula(model, home, body, values, args).map((part) =>
    formulaNode(job, home, part as CallPart, depth - 1, opened),
  );
  return { ...node, formula: inNames(body), ...written, parts, state: "opened" };
}
