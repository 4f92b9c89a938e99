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
    ["Rusn!B17", /has no sheet "Rusn"\. Did you mean "Runs"\? Its sheets are .*Runs/],
    [
      standsAt.split("!")[1] ?? "",
      /is a place without its sheet\. Name it with its sheet, as in Sheet!\S+: .*\S+!\S+ is price/,
    ],
    ["ZZ99", /ZZ99 is a place without its sheet\. Name it with its sheet, as in Sheet!ZZ99\./],
    ["prize", /Did you mean "price"\?/],
    [label.toUpperCase(), new RegExp(`That is the label of .*"${labelled?.name}"`)],
    [`${price.sheet}!Z999`, /No input or figure of template fence stands at/],
    [
      "runs.push[9]",
      /runs\.push has no row 9: its rows are 1 to 5\. Ask for one of them, or .*runs\.push\./,
    ],
    ["RUNS.PUSH[0]", /runs\.push has no row 0: its rows are 1 to 5/],
    ["runs[2]", /runs\[2\] is a whole row\. Name a column of it, as in runs\.\w+\[2\]\./],
    ["price[2]", /price is a single figure without rows\. Ask for price\./],
    ["runs.far", /Did you mean "runs\.so_far"\?/],
    ["runs.far[2]", /Did you mean "runs\.so_far\[2\]"\?/],
    ["runs.not", /Did you mean "runs\.not_long"\?/],
    ["run.far", /Did you mean "runs\.so_far"\?/],
    ["runs.heding", /Did you mean "runs\.heading"\?/],
  ])("not known: %s", (given, sentence) =>
    expect(() => askedFor({ model }, given)).toThrow(sentence),
  );

  test("a table where none is asked for", () => {
    const asked = () => askedFor({ model }, "runs", false);
    expect(asked).toThrow(/name "runs" is not in template/);
    expect(asked).toThrow(/it is a table\. Name a column of it, such as runs\.\w+\./);
  });
});
