import { expect, test } from "vitest";
import { type Native, natives, type Typed } from "../../../engine/formula/functions/index.js";
import { textType } from "../../../engine/formula/type.js";
import { CellError, type Value } from "../../../engine/formula/value.js";
import { agree, shown } from "./agree.js";
import { caseLabel } from "./case-formula.js";
import { cases, type FunctionCase } from "./cases.js";

/** The value a cell would show: errors caught, a blank result 0. */
function shownBy({ name, args }: FunctionCase): Value {
  const run = natives.get(name)?.run;
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
  const few = [...natives.values()].filter(
    ({ name, run }) =>
      run !== undefined && name !== "PI" && cases.filter((one) => one.name === name).length < 3,
  );
  expect(few.map(({ name }) => name)).toEqual([]);
  expect(cases.some((one) => one.name === "PI")).toBe(true);
});

test("a function without a calculation has code of its own, as has whatever leaves arguments alone", () => {
  const lazy = [...natives.values()].filter(({ run }) => run === undefined);
  expect(lazy.map(({ name }) => name)).toEqual(["IF", "CHOOSE", "ISERROR", "ISBLANK"]);
  expect(lazy.every(({ code }) => code !== undefined)).toBe(true);
});

test("what the code of functions calls has a name of its own", () => {
  const calls = [...natives.values()].flatMap(({ code }) => Object.entries(code?.calls ?? {}));
  const apart = calls.filter(([name, call]) => calls.some(([n, c]) => n === name && c !== call));
  expect(apart).toEqual([]);
});

test("a function makes a text where its description says so, and no other one", () => {
  const text: Typed = { tree: { kind: "name", name: "x" }, type: textType };
  const makes = [...natives.values()].filter(({ check, least }) => {
    const args = Array.from({ length: Math.max(least, 1) }, () => text);
    const fit = (given: Typed) => given.tree;
    const fail = (reason: string): never => {
      throw new Error(reason);
    };
    try {
      return check(args, { fit, fail }).type.kind === "text";
    } catch {
      return false;
    }
  });
  const passedOn = ["IF", "CHOOSE", "INDEX", "FIXED"];
  const named = (of: readonly Native[]) =>
    of.map(({ name }) => name).filter((name) => !passedOn.includes(name));
  expect(named(makes)).toEqual(named([...natives.values()].filter((one) => one.makesText)));
});
