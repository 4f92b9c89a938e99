import { expect, test } from "vitest";
import { changedDemo, failingIn, shown } from "../../support/changed-demo.js";

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
