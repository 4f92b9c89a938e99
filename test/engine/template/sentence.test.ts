import { describe, expect, test } from "vitest";
import { calculate } from "../../../engine/evaluate/calculate.js";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import { waterVolume } from "../../../sheets/vocabulary/quantities.js";
import { tinyLines } from "../../support/tiny.js";

type Case = readonly [t.Quantity, number, string, t.Reader, t.UnitSystem, string];

/** What a sentence says of a figure, by both evaluators; the figure is in the units of the system. */
function said([quantity, value, options, reader, system]: Case): unknown {
  const page = tinyLines({
    figure: t.input(quantity, "Figure"),
    said: t.calc(t.text, `~{figure${options}}`, "Said", reader === "office" ? {} : { reader }),
  });
  const model = compile(page, system);
  const given = model.cells.map(({ name, fixed }) =>
    name === "figure" ? value : name === "plot" ? 1 : (fixed ?? null),
  );
  return calculate(model, given)[model.byId.get("said")?.index ?? -1];
}

const cases: readonly Case[] = [
  // lengths on site: feet and inches for those who measure, decimals for the office
  [t.length, 2.5, "", "office", "us", "2.50 ft"],
  [t.length, 2.5, "", "crew", "us", "2 ft 6 in"],
  [t.length, 8, "|1", "customer", "us", "8 ft"],
  [t.length, 0.75, "", "crew", "us", "9 in"],
  [t.length, 0, "", "crew", "us", "0 in"],
  [t.length, 1.999, "", "crew", "us", "2 ft"],
  [t.length, -2.5, "", "crew", "us", "-30 in"],
  [t.length, 1234.5, "", "crew", "us", "1,234 ft 6 in"],
  // to the safe side: a least goes up, a most goes down, what is on a step stays
  [t.length, 1.01, "|up", "crew", "us", "1 ft 1 in"],
  [t.length, 1.08, "|down", "crew", "us", "1 ft"],
  [t.length, 1.25, "|up", "crew", "us", "1 ft 3 in"],
  [t.length, 1.25, "|down", "crew", "us", "1 ft 3 in"],
  [t.length, 1.524, "|0", "office", "si", "1.52 m"],
  [t.length, 1.524, "|0", "crew", "si", "1.52 m"],
  [t.length, 1.521, "|0|up", "crew", "si", "1.53 m"],
  [t.length, 1.529, "|down", "crew", "si", "1.52 m"],
  [t.length, 1.52, "|up", "crew", "si", "1.52 m"],
  // small lengths: eighths of an inch, or whole inches where no decimals are asked for
  [t.smallLength, 2.37, "", "crew", "us", "2-3/8 in"],
  [t.smallLength, 0.52, "", "crew", "us", "1/2 in"],
  [t.smallLength, 6, "", "crew", "us", "6 in"],
  [t.smallLength, 0, "", "crew", "us", "0 in"],
  [t.smallLength, -0.5, "", "crew", "us", "-1/2 in"],
  [t.smallLength, 1, "|up", "crew", "us", "1 in"],
  [t.smallLength, 1.01, "|up", "crew", "us", "1-1/8 in"],
  [t.smallLength, 5.6, "|0", "crew", "us", "6 in"],
  [t.smallLength, 5.2, "|0|up", "crew", "us", "6 in"],
  // millimeters: by fives from 50 on, each where it is smaller
  [t.smallLength, 152.4, "|0", "office", "si", "152 mm"],
  [t.smallLength, 152.4, "|0", "crew", "si", "150 mm"],
  [t.smallLength, 101.6, "", "crew", "si", "100 mm"],
  [t.smallLength, 101.6, "|up", "crew", "si", "105 mm"],
  [t.smallLength, 100, "|0|up", "crew", "si", "100 mm"],
  [t.smallLength, 213, "|down", "supplier", "si", "210 mm"],
  [t.smallLength, 12.7, "|0", "crew", "si", "13 mm"],
  [t.smallLength, 49.2, "|0", "crew", "si", "49 mm"],
  [t.smallLength, 49.8, "|0", "crew", "si", "50 mm"],
  [t.smallLength, -101.6, "|0", "crew", "si", "-100 mm"],
  [t.smallLength, 0, "", "crew", "si", "0 mm"],
  // units by their reader, one or many
  [waterVolume, 12, "", "customer", "us", "12 gallons"],
  [waterVolume, 1, "", "customer", "us", "1 gallon"],
  [waterVolume, 12, "", "crew", "us", "12 gal"],
  [waterVolume, 45, "", "customer", "si", "45 liters"],
  [t.area, 20, "", "customer", "us", "20 square feet"],
  [t.hourlyFlow, 8100, "", "customer", "us", "8,100 gallons an hour"],
  [t.tons, 1.04, "|0", "crew", "us", "1 ton"],
  [t.tons, 22.3, "|1", "crew", "us", "22.3 tons"],
  [t.tons, 22.3, "|1", "customer", "si", "22.3 metric tons"],
  [t.days, 1, "|0", "office", "us", "1 day"],
  [t.days, 3, "|0|bare", "customer", "us", "3"],
  [t.hours, 2.5, "", "crew", "us", "2.5 h"],
  // money on paper: cents only where there are some
  [t.money, 14000, "|2", "customer", "us", "$14,000"],
  [t.money, 14000.5, "|2", "customer", "us", "$14,000.50"],
  [t.money, 14000, "|2", "office", "us", "$14,000.00"],
  [t.count, 3, "", "crew", "us", "3"],
  [t.percent, 0.64, "|0", "crew", "us", "64%"],
];

describe("a sentence spells a figure for its reader", () => {
  test.each(cases)("%#: %s", (...one) => {
    expect(said(one)).toBe(one[5]);
  });

  test("an unknown word behind a bar is refused", () => {
    expect(() => said([t.length, 1, "|upwards", "crew", "us", ""])).toThrow(
      /"upwards" behind a bar is not known: write decimals, bare, up or down/,
    );
  });

  test("texts pass as they are", () => {
    const page = tinyLines({
      said: t.calc(t.text, "~{title} of {plot}.", "Said", { reader: "customer" }),
    });
    const model = compile(page, "us");
    const given = model.cells.map(({ name, fixed }) =>
      name === "title" ? "Art gallery, 3 gal, 1 tons" : name === "plot" ? 1 : (fixed ?? null),
    );
    expect(calculate(model, given)[model.byId.get("said")?.index ?? -1]).toBe(
      "Art gallery, 3 gal, 1 tons of 1 ft.",
    );
  });
});
