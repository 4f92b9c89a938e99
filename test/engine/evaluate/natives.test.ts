import { expect, test } from "vitest";
import { natives } from "../../../engine/evaluate/natives/index.js";
import { natives as allowed } from "../../../engine/formula/natives.js";
import { CellError, type Value } from "../../../engine/formula/value.js";
import { agree, shown } from "./agree.js";
import { caseLabel } from "./case-formula.js";
import { cases, type FunctionCase } from "./cases.js";

/** The value a cell would show: errors caught, a blank result 0. */
function shownBy({ name, args }: FunctionCase): Value {
  const run = natives.get(name);
  if (run === undefined) throw new Error(`no native function ${name}`);
  try {
    return run(args) ?? 0;
  } catch (error) {
    if (error instanceof CellError) return error;
    throw error;
  }
}

test.each(cases.map((one) => [caseLabel(one), one] as const))("%s", (_, one) => {
  const actual = shownBy(one);
  expect(agree(actual, one.expected), `${shown(actual)}, not ${shown(one.expected)}`).toBe(true);
});

test("every native function has three cases or more, but PI, which has no arguments", () => {
  const few = [...natives.keys()].filter(
    (name) => name !== "PI" && cases.filter((one) => one.name === name).length < 3,
  );
  expect(few).toEqual([]);
  expect(cases.some((one) => one.name === "PI")).toBe(true);
});

test("every function that templates may use is here, but those that leave arguments alone", () => {
  const elsewhere = ["IF", "ISERROR", "CHOOSE", "ISBLANK"];
  const wanted = [...allowed.keys()].filter((name) => !elsewhere.includes(name));
  expect(new Set(natives.keys())).toEqual(new Set(wanted));
});
