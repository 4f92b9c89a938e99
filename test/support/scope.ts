import { check, fitTo, type Scope } from "../../engine/formula/check.js";
import type { Typed } from "../../engine/formula/functions/index.js";
import { Inliner } from "../../engine/formula/inline.js";
import type { NamedFormula } from "../../engine/formula/named-formula.js";
import { parse } from "../../engine/formula/parse.js";
import { type PrintStyle, print } from "../../engine/formula/print.js";
import type { Tree } from "../../engine/formula/tree.js";
import { typeOfQuantity } from "../../engine/formula/type.js";
import * as q from "../../engine/units/quantity.js";
import { waterVolume } from "../../sheets/vocabulary/quantities.js";

/** Names of a make-believe sheet: single cells, and columns of a table of its own. */
const scalars: Readonly<Record<string, q.Quantity>> = {
  plot: q.length,
  gap: q.smallLength,
  bed: q.area,
  tank: waterVolume,
  rate: q.flow,
  slow_rate: q.hourlyFlow,
  bill: q.money,
  wage: q.hourlyRate,
  shift: q.hours,
  part_of_day: q.hoursADay,
  share: q.percent,
  pots: q.count,
  title: q.text,
  paved: q.yesno,
  begun: q.date,
};
const columns: Readonly<Record<string, q.Quantity>> = {
  "rows.width": q.length,
  "rows.thick": q.smallLength,
  "rows.name": q.text,
  "rows.used": q.yesno,
  "rows.cost": q.money,
  "rows.at": q.count,
};

export const namesInScope = [...Object.keys(scalars), ...Object.keys(columns)];

export function scopeOf(system: q.UnitSystem, formulas: readonly NamedFormula[] = []): Scope {
  return {
    system,
    formulas: new Map(formulas.map((one) => [one.name, one])),
    names: () => namesInScope,
    resolve: (name): Typed | undefined => {
      if (Object.hasOwn(scalars, name)) {
        const type = typeOfQuantity(scalars[name] as q.Quantity, system);
        return { tree: { kind: "scalar", name }, type };
      }
      if (!Object.hasOwn(columns, name)) return undefined;
      const [table = "", column = ""] = name.split(".");
      const type = typeOfQuantity(columns[name] as q.Quantity, system, true);
      return { tree: { kind: "column", table, column }, type };
    },
  };
}

/** How formulas are printed in these tests: as in a file, references by name. */
export const byName: PrintStyle = {
  prefixed: false,
  exponent: "e",
  quotes: "doubled",
  reference: (to) =>
    to.kind === "scalar"
      ? to.name
      : to.kind === "column"
        ? `${to.table}.${to.column}`
        : to.kind === "area"
          ? `cells.${to.sheet}`
          : `${to.back === 1 ? "above." : ""}${to.column}`,
};

/** The checked tree of a formula that must yield `quantity`, with named formulas opened. */
export function opened(
  formula: string,
  quantity: q.Quantity,
  system: q.UnitSystem = "us",
  formulas: readonly NamedFormula[] = [],
): Tree {
  const scope = scopeOf(system, formulas);
  const wanted = typeOfQuantity(quantity, system);
  const tree = fitTo(check(parse(formula), formula, scope), wanted, formula, scope);
  return new Inliner(scope.formulas, system).open(tree);
}

/** The same as text. */
export const printed = (...args: Parameters<typeof opened>): string =>
  print(opened(...args), byName);
