import { expect, test } from "vitest";
import { changedDemo, failingIn, pagesAfter, shown } from "../../support/changed-demo.js";

const typed = { description: "A bench", other_cost: 500 };
const none = changedDemo({ options: [] });

test("in a row without an option stands what most of them have, and nothing comes of it", () => {
  expect(shown(none, "options.unit[4]")).toBe("each");
  expect(shown(none, "options.taken[4]")).toBe(false);
  expect(shown(none, "options.option_price[4]")).toBe(0);
  expect(shown(none, "options.decisions_status[4]")).toBe("");
});

test("an option typed by name and cost alone has its price", () => {
  const given = changedDemo({ options: [typed] });
  expect(failingIn(given).has("options.priced")).toBe(false);
  expect(shown(given, "options.option_price[1]")).toBeGreaterThan(500);
  expect(shown(given, "options.decisions_status[1]")).toBe("");
  expect(shown(given, "price")).toBe(shown(none, "price"));
});

/** What the Proposal says of one option, typed with its name and this. */
const offered = (more: object): string | undefined =>
  pagesAfter({ options: [{ description: "A bench", ...more }] }).proposal.find((line) =>
    line.includes("A bench"),
  );

test.each([
  ["a name alone", {}, undefined],
  ["a name, and taken", { taken: true }, undefined],
  ["an item of which none is wanted", { code: "foam" }, undefined],
  ["an item that is not in the book", { code: "no-such", needed: 2 }, undefined],
  ["a cost", { other_cost: 500 }, /^☐ .*: A bench, \$[\d,]+ more\. To add it/],
  ["man-hours alone", { extra_hours: 4 }, /^☐ .*: A bench, \$[\d,]+ more\./],
  ["a cost of 0", { other_cost: 0 }, /^☐ .*: A bench, no extra cost\. To add it/],
  ["a cost of 0, and taken", { other_cost: 0, taken: true }, /^☒ .*: A bench, no extra cost\.$/],
])("the Proposal offers an option with %s, or leaves it out", (_, more, line) => {
  const said = offered(more);
  if (line === undefined) expect(said).toBeUndefined();
  else expect(said).toMatch(line);
});

test("an option without a cost is told by its check, which names the row and what to enter", () => {
  const options = [typed, { description: "A gate" }];
  const given = changedDemo({ options });
  expect(failingIn(given).has("options.costed")).toBe(true);
  expect(shown(given, "options.to_do[1]")).toBe("");
  expect(shown(given, "options.to_do[2]")).toMatch(
    /^A gate: no cost is given, so the Proposal leaves it out\. Enter Other cost \(options\.other_cost\) in options on sheet Decisions, 0 where it costs nothing\./,
  );
  expect(failingIn(changedDemo({ options: [typed] })).has("options.costed")).toBe(false);
  expect(failingIn(changedDemo({ options: [{ ...typed, other_cost: 0 }] }))).not.toContain(
    "options.costed",
  );
});
