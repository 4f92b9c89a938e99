import { expect, test } from "vitest";
import { unitNamed } from "../../../engine/units/unit.js";
import { measureIn } from "../../../engine/units/written.js";

test.each<[own: string, text: string, value: number]>([
  // a number without a unit is in the cell's own
  ["ft", "3.5", 3.5],
  ["ft", "-3", -3],
  ["in", ".5", 0.5],
  ["ft", "1,250.5", 1250.5],
  ["ft", "1e3", 1000],
  ["ft", "2 1/2", 2.5],
  ["ft", "2-1/2", 2.5],
  ["ft", "3/4", 0.75],
  ["ft", "2½", 2.5],
  // lengths, as they are written on a site
  ["ft", "24 in", 2],
  ["ft", "24in.", 2],
  ["ft", "24''", 2],
  ["ft", '24"', 2],
  ["ft", "24 inches", 2],
  ["ft", "2'", 2],
  ["ft", "2'6\"", 2.5],
  ["ft", "2' 6\"", 2.5],
  ["ft", "2'-6\"", 2.5],
  ["ft", "2′6″", 2.5],
  ["ft", "2’6”", 2.5],
  ["ft", "2 ft 6 in", 2.5],
  ["ft", "2 ft. 6 in.", 2.5],
  ["ft", "2 feet, 6 inches", 2.5],
  ["ft", "2'6-1/2\"", 2 + 6.5 / 12],
  ["ft", "2'-6 ½\"", 2 + 6.5 / 12],
  ["ft", "-2'6\"", -2.5],
  ["in", "2-1/2 in", 2.5],
  ["in", "2'6\"", 30],
  ["in", "2 ft", 24],
  ["in", "¾ in", 0.75],
  ["ft", "1.2 m", 1.2 / 0.3048],
  ["ft", "120 cm", 1.2 / 0.3048],
  ["m", "4 ft", 1.2192],
  ["mm", "2 in", 50.8],
  ["ft", "3 yd", 9],
  ["ft", "3 FT", 3],
  // other kinds
  ["ft²", "100 sq ft", 100],
  ["ft²", "100 ft2", 100],
  ["ft²", "10 m²", 10 / 0.3048 ** 2],
  ["yd³", "27 cu. ft.", 1],
  ["gal/min", "40 gpm", 40],
  ["gal/min", "2,400 gph", 40],
  ["gal/min", "2400 gal per hour", 40],
  ["gal/h per in", "100 gph per inch", 100],
  ["gal/h per in", "100 gal/hr/in", 100],
  ["ft/s", "3.5 fps", 3.5],
  ["in/day", "0.25 in per day", 0.25],
  ["lb", "2 tons", 4000],
  ["t", "2 t", 2],
  ["ton", "2 tonnes", 2000 / 907.18474],
  ["lb/ft³", "165 pcf", 165],
  ["h", "90 min", 1.5],
  ["days", "1 day", 1],
  ["°", "45 deg", 45],
  ["$", "$12.50", 12.5],
  ["$", "$1,250", 1250],
  ["$/kWh", "$0.16/kWh", 0.16],
  ["", "12", 12],
])("%s: %s is %d", (own, text, value) => {
  expect(measureIn(unitNamed(own), text)).toBeCloseTo(value, 12);
});

test.each([
  ["ft", "tall"],
  ["ft", ""],
  ["ft", "2-6"],
  ["ft", "2 6"],
  ["ft", "1,2"],
  ["ft", "1/0"],
  ["ft", "--2"],
  ["ft", "__proto__"],
  ["ft", "2 + 3"],
])("%s: %j is no number", (own, text) => {
  expect(measureIn(unitNamed(own), text)).toBeUndefined();
});

test.each([
  [
    "ft",
    "24 gal",
    "unit-wrong",
    /is in gal \(length\^3\), but ft is wanted \(length\)\. Write it in ft\./,
  ],
  ["gal/min", "40 gal", "unit-wrong", /but gal\/min is wanted/],
  ["$", "12 ft", "unit-wrong", /but \$ is wanted/],
  ["", "12 ft", "unit-wrong", /but a plain number, without a unit is wanted/],
  ["", "12 h/day", "unit-wrong", /is in h\/day/],
  ["ft", "3 cubits", "unit-unknown", /the unit "cubits" is not known\. Write the number in ft/],
  ["ft", "3 constructor", "unit-unknown", /not known/],
  ["ft", "2'6", "measure-unclear", /its last number has no unit\. Write 2'6 in/],
  ["ft", "2 ft 14 in", "measure-unclear", /12 inches and more are a foot/],
  ["ton", "5 t", "measure-unclear", /t is the sign of the metric ton/],
])("%s: %s is told: %s", (own, text, code, sentence) => {
  const read = () => measureIn(unitNamed(own), text);
  expect(read).toThrow(sentence);
  expect(read).toThrow(expect.objectContaining({ code, exitStatus: 2 }));
});
