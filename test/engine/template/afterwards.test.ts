import { describe, expect, it, test } from "vitest";
import { calculate } from "../../../engine/evaluate/calculate.js";
import type { Value } from "../../../engine/formula/value.js";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import { faultsOf } from "../../support/tiny.js";

const bid = (price = "plot*2") =>
  t.sheet("Bid", "For a test.", [
    t.lines("Given", {
      plot: t.input(t.number, "Plot", { default: 3 }),
      price: t.calc(t.number, price, "Price"),
      dear_enough: t.check("price>1", "{price} is too little", { label: "Price too low" }),
    }),
  ]);
const took = (
  level: "must" | "look" = "look",
  afterwards: { afterwards?: true } = { afterwards: true },
) =>
  t.sheet(
    "Took",
    "For a test.",
    [
      t.lines("After", {
        state: t.input(t.text, "State", { default: "bid", choices: ["bid", "built"] }),
        spent: t.input(t.number, "Spent", { optional: true, least: 0 }),
        more: t.calc(t.number, 'IF(state="built",spent-price,0)', "More", { working: true }),
        not_more: t.check("more<=0", "{more} more was spent", { label: "Spent more", level }),
      }),
    ],
    afterwards,
  );
const tiny = (...sheets: t.SheetDeclaration[]) =>
  t.template({ name: "tiny", version: 1, title: "Tiny", sheets });

const model = compile(tiny(bid(), took()), "us");
function solved(given: Readonly<Record<string, Value>>) {
  const values = calculate(
    model,
    model.cells.map(
      ({ id, fixed, declaration }) =>
        given[id] ?? fixed ?? (declaration.kind === "input" ? (declaration.default ?? null) : null),
    ),
  );
  return (id: string) => values[model.byId.get(id)?.index as number];
}

describe("what is filled in after the work", () => {
  it("warns, and the bid stands as before", () => {
    const of = solved({ state: "built", spent: 9 });
    expect([of("not_more"), of("bid_stands"), of("checks_failed"), of("warnings")]).toEqual([
      ...[false, true, 0, 1],
    ]);
  });

  it.each([
    ["over its limit", { spent: -1 }, "inputs_right_took"],
    ["no choice of the list", { state: "sold" }, "inputs_right_took"],
    ["a text for a number", { state: "built", spent: "nine" }, "figures_right_took"],
  ])("%s: a warning names the sheet", (_, given, check) => {
    const of = solved(given);
    expect(of(check)).toBe(false);
    expect([of("bid_stands"), of("errors_found"), of("checks_failed")]).toEqual([true, 0, 0]);
    expect(of("bid_verdict")).toMatch(/^READY: /);
  });

  it("keeps its steps on its own sheet, not among the workings of the bid", () => {
    expect(model.byId.get("more")?.sheet).toBe("Took");
  });
});

test("the bid may not read it, and no check of it may stop the bid", () => {
  expect(faultsOf(tiny(bid("plot*2+spent"), took()))).toEqual([
    expect.stringMatching(/^Bid, price: it reads "spent" of sheet Took, which is filled in after/),
  ]);
  expect(faultsOf(tiny(bid(), took("must")))).toEqual([
    expect.stringMatching(/^Sheet "Took": .* no check of it may stop the bid/),
  ]);
  expect(faultsOf(tiny(bid(), took()))).toEqual([]);
});

const role = {
  ...{ state: "state", states: { bid: "bid", won: "won", lost: "lost", built: "built" } },
  ...{ decided: "spent", began: "spent", ended: "spent", reason: "state", days: "spent" },
  ...{ daysPlanned: "price", rainDays: "spent", rainDaysPlanned: "price", charged: "spent" },
  ...{ costPlanned: "price", costMade: "price", toldWhole: "price", leftOut: "price" },
  tasks: {
    ...{ task: "price", unit: "price", rateCode: "price", handRateCode: "price", byHand: "price" },
    ...{ rate: "price", factor: "price", plannedQuantity: "price", plannedHours: "price" },
    ...{
      plannedMachine: "price",
      quantity: "spent",
      hours: "spent",
      machine: "spent",
      note: "state",
    },
  },
  others: { task: "state", hours: "spent", why: "state" },
  conditions: ["plot"],
};
const withRole = (built: typeof role, sheet = took()) => ({
  ...tiny(bid(), sheet),
  roles: { price: "price", cost: "price", sections: [], built },
});

test("its role names cells that there are, and actuals that nothing of the bid hangs on", () => {
  expect(faultsOf(withRole(role))).toEqual([]);
  expect(faultsOf(withRole({ ...role, ended: "day.ended" }))).toEqual([
    'The role "built" names "day.ended" as ended, which is no cell and no column. Name one.',
  ]);
  const inTheBid = faultsOf(withRole({ ...role, charged: "plot" }));
  expect(inTheBid).toEqual([expect.stringMatching(/"plot" as charged, an input of sheet Bid/)]);
});
