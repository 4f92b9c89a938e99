import { plainValue } from "../arithmetic/operators.js";
import type { Tree } from "../tree.js";
import { plain } from "../type.js";
import { type Argument, CellError, type Value } from "../value.js";
import { least, most } from "./aggregates.js";
import { rowsAt, valueAt } from "./arguments.js";
import { criterion } from "./criterion.js";
import { type Check, type NativeFunction, native, type Rules, type Typed } from "./description.js";
import { alone, even, numeric } from "./rules.js";

/** For each row, whether it meets all pairs of range and criterion from argument `first` on; an error meets none. */
function meeting(args: readonly Argument[], first: number): boolean[] {
  const kept = rowsAt(args, first).map(() => true);
  for (let index = first; index < args.length; index += 2) {
    const values = rowsAt(args, index);
    if (values.length !== kept.length) throw new CellError("#VALUE!");
    const test = criterion(valueAt(args, index + 1));
    values.forEach((value, row) => {
      kept[row] = kept[row] === true && !(value instanceof CellError) && test(value);
    });
  }
  return kept;
}

/** The numbers of `values` in the rows that meet the criteria; throws an error that stands in one of them. */
function chosen(values: readonly Value[], kept: readonly boolean[]): number[] {
  if (values.length !== kept.length) throw new CellError("#VALUE!");
  return values
    .filter((_, row) => kept[row] === true)
    .map(plainValue)
    .filter((value) => typeof value === "number");
}

const count: NativeFunction = (args) => meeting(args, 0).filter(Boolean).length;

const over =
  (calculate: (values: readonly number[]) => number): NativeFunction =>
  (args) =>
    calculate(chosen(rowsAt(args, 0), meeting(args, 1)));

/** Criteria in pairs: a column, then a value it must equal (or a text such as ">0"). */
function pairs(args: readonly Typed[], rules: Rules): Tree[] {
  const trees: Tree[] = [];
  for (let i = 0; i < args.length; i += 2) {
    const [column, wanted] = [args[i], args[i + 1]];
    if (column === undefined || wanted === undefined)
      return rules.fail("its criteria come in pairs");
    if (!column.type.range) rules.fail("a criterion looks through a whole column");
    const comparison = wanted.tree.kind === "text" && /^[<>=]/.test(wanted.tree.value);
    trees.push(
      column.tree,
      comparison ? wanted.tree : rules.fit(wanted, column.type, "a criterion"),
    );
  }
  return trees;
}

const pairsOnly: Check = (args, rules) => ({ args: pairs(args, rules), type: plain });

const columnThenPairs: Check = (args, rules) => {
  const first = args[0] as Typed;
  return {
    args: [first.tree, ...pairs(args.slice(1), rules)],
    type: alone(numeric([first], rules, "it").type),
  };
};

const since = "a blank criterion = #VALUE!";

const extreme = (name: string, calculate: (values: readonly number[]) => number, lookUp: string) =>
  native(name, [3, 21], {
    check: columnThenPairs,
    columns: (place) => place === 0 || !even(place),
    prefixed: true,
    refused: `is 0 in some programs and an error in others where no row matches: write ${lookUp}(column, keys, key)`,
    run: over(calculate),
    judge: { takes: ["range", "range", "value"], again: 2, since },
  });

/** Functions over the rows that meet criteria; ranges of unequal length throw #VALUE!. */
export const conditional = [
  native("COUNTIF", [2], {
    check: pairsOnly,
    columns: even,
    refused:
      "passes over rows in error and reads * and < in texts: write COUNT_WHERE(keys, key), LISTED(keys, key), or SUMPRODUCT((column>0)*1)",
    run: count,
    judge: { takes: ["range", "value"], since },
  }),
  native("COUNTIFS", [2, 20], {
    check: pairsOnly,
    columns: even,
    refused: "passes over rows in error: write SUMPRODUCT((first>0)*(second=wanted))",
    run: count,
    judge: { takes: ["range", "value"], again: 2, since },
  }),
  extreme("MAXIFS", most, "LARGEST_WHERE"),
  extreme("MINIFS", least, "LEAST_WHERE"),
];
