import { expect, test } from "vitest";
import { modelOf } from "../../../engine/template/models.js";
import { waterfall } from "../../../sheets/templates/waterfall.js";

/** The fields of an asking sheet: single cells, and columns of tables. */
const fieldsOf = (asked: string): Set<string> =>
  new Set(
    modelOf(waterfall, "us").cells.flatMap(({ declaration, name }) =>
      declaration.kind === "input" && declaration.asked === asked ? [name] : [],
    ),
  );

test("a walk is forty to sixty fields: what is no answer of the site is decided, or a rule", () => {
  const fields = fieldsOf("walk");
  expect(fields.size).toBeGreaterThanOrEqual(40);
  expect(fields.size).toBeLessThanOrEqual(60);
});

test("the Walk sheet prints as a form of two pages", () => {
  const { asks = [] } = waterfall;
  expect(asks.find(({ asked }) => asked === "walk")?.formPages).toBe(2);
});
