import { describe, expect, test } from "vitest";
import { askedFor } from "../../../engine/cli/cell-asked-for.js";
import { modelOf } from "../../../engine/template/models.js";
import { addressOf } from "../../../engine/workbook/read/address.js";
import { fence } from "../../support/fence.js";

const model = modelOf(fence, "us");
const price = model.byId.get("price");
if (price === undefined) throw new Error("The fence has no price.");
const standsAt = `${price.sheet}!${addressOf({ row: price.line, column: price.column })}`;
const labelled = model.cells.find(
  ({ implied, table, name, declaration: { label } }) =>
    !implied && table === undefined && label.toLowerCase().replaceAll(" ", "_") !== name,
);
const label = labelled?.declaration.label ?? "";

describe("what a name on the command line means", () => {
  test.each([
    ["PRICE", "price"],
    ["runs.push[1]", "runs.push[1]"],
    ["runs.push", "runs.push"],
    ["runs", "runs"],
    [standsAt, "price"],
    [standsAt.toLowerCase(), "price"],
    [`'${price.sheet}'!${standsAt.split("!")[1]?.replace(/^(\D+)/, "$$$1$$")}`, "price"],
  ])("%s", (given, id) => expect(askedFor({ model }, given)).toBe(id));

  test("in a workbook, the place is the one of the workbook", () => {
    const moved = { sheet: price.sheet, address: "Z99", cell: { value: 1 } };
    const at = new Map([["price", moved]]);
    expect(askedFor({ model, at }, `${price.sheet}!Z99`)).toBe("price");
    expect(() => askedFor({ model, at }, standsAt)).toThrow(/stands at/);
  });

  test.each([
    ["prize", /Did you mean "price"\?/],
    [label.toUpperCase(), new RegExp(`That is the label of .*"${labelled?.name}"`)],
    [`${price.sheet}!Z999`, /No input or figure of template fence stands at/],
  ])("not known: %s", (given, sentence) =>
    expect(() => askedFor({ model }, given)).toThrow(sentence),
  );

  test("a table where none is asked for", () =>
    expect(() => askedFor({ model }, "runs", false)).toThrow(/name "runs" is not in template/));
});
