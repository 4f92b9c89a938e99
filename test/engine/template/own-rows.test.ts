import { expect, test } from "vitest";
import {
  decide,
  type InputDeclaration,
  input,
  money,
  office,
  table,
  text,
  walk,
} from "../../../engine/template/index.js";
import { standsReady } from "../../../engine/template/own-rows.js";

const cost = decide(money, "Cost", { default: 0 });
const extras = (first: InputDeclaration, filled?: string) =>
  table("extras", "Extras", { rows: 3, ...(filled && { filled }) }, { what: first, cost });

test.each([
  ["a row that begins on the walk", extras(walk(text, "What"), "LEN(what)>0"), true],
  ["a row that begins among the decisions", extras(decide(text, "What"), "LEN(what)>0"), true],
  ["a row that the office begins", extras(office(text, "What"), "LEN(what)>0"), false],
  ["a row that begins where it is declared", extras(input(text, "What"), "LEN(what)>0"), false],
  ["a table whose rows are all in use", extras(decide(text, "What")), false],
])("what is decided with a default for %s", (_, block, ready) => {
  expect(standsReady(block, cost)).toBe(ready);
});

test("what no default can be for, and what others are asked, does not stand ready", () => {
  const block = extras(decide(text, "What"), "LEN(what)>0");
  expect(standsReady(block, decide(money, "Cost"))).toBe(false);
  expect(standsReady(block, office(money, "Cost", { default: 0 }))).toBe(false);
});
