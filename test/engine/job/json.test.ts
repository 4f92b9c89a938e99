import fc from "fast-check";
import { expect, test } from "vitest";
import { parsedJson } from "../../../engine/job/json.js";

/** Each: the text, and the place and the words of the error. */
test.each<[string, string, RegExp]>([
  ["", "line 1, column 1", /a value is missing, and the end of the file is none/],
  ["{", "line 1, column 2", /a name in double quotes is missing, and the end of the file is none/],
  ['{\n  "a": 1\n  "b": 2\n}', "line 3, column 3", /a comma or \} is missing before a text/],
  ['{\n  "a": 1,\n}', "line 2, column 9", /a comma too many before \}/],
  ["[1, 2,]", "line 1, column 6", /a comma too many before \]/],
  ["[1 2]", "line 1, column 4", /a comma or \] is missing before 2/],
  ["{ 'a': 1 }", "line 1, column 3", /a name in double quotes is missing, and ' is none/],
  ["{ a: 1 }", "line 1, column 3", /a name in double quotes is missing, and a is none/],
  ['{ "a" 1 }', "line 1, column 7", /a colon is missing before 1/],
  ['{ "width": 24 in }', "line 1, column 15", /a comma or \} is missing before in/],
  ['{ "width": .5 }', "line 1, column 12", /a value is missing, and \.5 is none/],
  ['{ "width": 1/2 }', "line 1, column 13", /a comma or \} is missing before \//],
  ['{ "gate": yes }', "line 1, column 11", /a value is missing, and yes is none/],
  ['{\n "a": "open,\n "b": 1 }', "line 2, column 7", /a text is not closed/],
  ['["C:\\new\\quotes"]', "line 1, column 9", /a backslash must stand before one of/],
  ['["a\tb"]', "line 1, column 4", /a tab within a text is written \\t/],
  ['{"a": 1} x', "line 1, column 10", /x stands after the end/],
  ['\r\n{\r\n"a": 01}', "line 3, column 7", /a comma or \} is missing before 1/],
])("%j: %s", (text, place, what) => {
  const read = () => parsedJson(text, "job.json");
  expect(read).toThrow(expect.objectContaining({ code: "json-broken", exitStatus: 2 }));
  expect(read).toThrow(`job.json is not valid JSON: ${place}: `);
  expect(read).toThrow(what);
});

test("property: every text that JSON refuses has a place, and the text before it can still be JSON", () => {
  const broken = fc
    .tuple(
      fc.jsonValue(),
      fc.nat(),
      fc.constantFrom("", ",", "}", "]", '"', "'", ":", "x", "0", "\n", "\\", " "),
    )
    .map(([value, where, sign]) => {
      const text = JSON.stringify(value, null, 1);
      const at = where % (text.length + 1);
      return text.slice(0, at) + sign + text.slice(at + (sign === "" ? 1 : 0));
    });
  fc.assert(
    fc.property(broken, (text) => {
      let valid = true;
      try {
        JSON.parse(text);
      } catch {
        valid = false;
      }
      if (valid) {
        expect(parsedJson(text, "a")).toEqual(JSON.parse(text));
        return;
      }
      expect(() => parsedJson(text, "a")).toThrow(/line \d+, column \d+: (?!something)/);
    }),
    { numRuns: 2000 },
  );
});

test("a deep and a long text are told as fast as any", () => {
  expect(() => parsedJson("[".repeat(100_000), "a")).toThrow(/too deep within one another/);
  expect(() => parsedJson(`["${"x".repeat(5_000_000)}`, "a")).toThrow(/a text is not closed/);
});

test.each(["-0", "-0.0", "-0e5", "[1, -0]", '{"a": -0.00E-3 }', '{"a": [-0\n]}'])(
  "a zero below zero is a zero: %s",
  (text) => {
    const told = (value: unknown): unknown =>
      typeof value === "object" && value !== null ? Object.values(value).map(told) : value;
    const [found] = [told(parsedJson(`{"x": ${text}}`, "job.json"))].flat(4).slice(-1);
    expect(Object.is(found, 0)).toBe(true);
  },
);
