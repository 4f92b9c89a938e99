import { expect, test } from "vitest";
import { Graph, GraphPacker } from "../../../engine/stored/graph.js";

const again = (value: unknown): unknown => {
  const packer = new GraphPacker();
  const place = packer.place(value);
  const { shapes, entries } = packer;
  return new Graph(JSON.parse(JSON.stringify({ shapes, entries }))).at(place);
};

const shared = { deep: ["x", 1] };

test.each<[string, unknown]>([
  ["a number", 1.5],
  ["a text of two lines", 'a "b"\nc'],
  ["an empty list", []],
  ["lists in lists", [[1, [2]], [], [null, true, false, ""]]],
  ["objects of several shapes", { a: 1, b: { a: 2 }, c: { b: 3 }, "with space": {} }],
  ["numbers that are the place of something else", [0, 1, 2, [0, 1], { a: 0 }]],
])("%s comes back as it was", (_, value) => {
  expect(again(value)).toEqual(value);
});

test("what is shared stays shared", () => {
  const { a, b } = again({ a: shared, b: [shared] }) as { a: object; b: object[] };
  expect(a).toBe(b[0]);
});

test("an entry that is undefined is left out", () => {
  expect(Object.keys(again({ a: undefined, b: 1 }) as object)).toEqual(["b"]);
});

test.each<[string, unknown]>([
  ["no number", Number.NaN],
  ["an endless number", Number.POSITIVE_INFINITY],
  ["a zero below zero", -0],
  ["a map", new Map()],
  ["nothing in a list", [undefined]],
])("%s is refused, since JSON would change it", (_, value) => {
  expect(() => again(value)).toThrow();
});
