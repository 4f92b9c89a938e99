import { expect, test } from "vitest";
import { canonicalJson } from "../../../../engine/job/trail/canonical.js";
import { appended, hashOf, headOf } from "../../../../engine/job/trail/chain.js";
import type { Change, TrailEntry } from "../../../../engine/job/trail/entry.js";
import { verifyTrail } from "../../../../engine/job/trail/verify.js";

const change = (input: string, now: number): Change => ({
  time: "2026-03-04T05:06:07.089Z",
  by: "Estimator",
  input,
  old: null,
  new: now,
  unit: "ft",
  from: "measured on site",
});
const trail = appended(
  [],
  ["a", "b", "c", "d", "e"].map((name, i) => change(name, i)),
);
const replaced = (place: number, entry: object): TrailEntry[] =>
  trail.map((one, i) => (i === place - 1 ? { ...one, ...entry } : one));

// The hash was worked out by hand with sha256sum over the text of the entry: any program can check a trail.
test("an entry's hash is SHA-256 over its canonical JSON with the hash before it", () => {
  const text =
    '{"before":"none","by":"Estimator","from":"measured on site","input":"a","new":0,"number":1,"old":null,"time":"2026-03-04T05:06:07.089Z","unit":"ft"}';
  const { hash, ...rest } = trail[0] as TrailEntry;
  expect(canonicalJson({ ...rest, before: "none" })).toBe(text);
  expect(hash).toBe("fae00f4ed35e22fdb2364aa3c2d9f25e1fa630863b4da9ab7c1bd46a21c32fbd");
});

test.each([
  [{ b: 1, a: [true, null, "é\n"] }, '{"a":[true,null,"é\\n"],"b":1}'],
  [{ a: undefined, z: 1e21, y: 0.1 }, '{"y":0.1,"z":1e+21}'],
])("canonical JSON of %j", (value, text) => {
  expect(canonicalJson(value)).toBe(text);
});

test("numbers are kept to 15 digits, as every spreadsheet program stores them", () => {
  const [entry] = appended([], [change("a", 0.1 + 0.2)]);
  expect(entry?.new).toBe(0.3);
});

test("a trail as written has no faults; nor has an empty one", () => {
  expect(verifyTrail(trail)).toEqual([]);
  expect(verifyTrail(trail, headOf(trail))).toEqual([]);
  expect(verifyTrail([], "none")).toEqual([]);
});

const rehashed = (place: number, entry: object) =>
  replaced(place, {
    ...entry,
    hash: hashOf(
      { ...(trail[place - 1] as TrailEntry), ...entry },
      trail[place - 2]?.hash ?? "none",
    ),
  });

test.each<[string, TrailEntry[], string | undefined, [string, number | undefined][]]>([
  ["a value edited", replaced(2, { new: 9 }), undefined, [["hash", 2]]],
  ["a time edited", replaced(5, { time: "2027-03-04T05:06:07.089Z" }), undefined, [["hash", 5]]],
  ["a note added", replaced(1, { note: "n" }), undefined, [["hash", 1]]],
  ["an entry edited, its hash made anew", rehashed(2, { new: 9 }), undefined, [["hash", 3]]],
  ["the last one so", rehashed(5, { new: 9 }), headOf(trail), [["head", undefined]]],
  [
    "an entry taken out",
    trail.filter((_, i) => i !== 2),
    undefined,
    [
      ["number", 3],
      ["hash", 3],
    ],
  ],
  [
    "the first taken out",
    trail.slice(1),
    undefined,
    [
      ["number", 1],
      ["hash", 1],
    ],
  ],
  [
    "two swapped",
    [0, 2, 1, 3, 4].map((i) => trail[i] as TrailEntry),
    undefined,
    [
      ["number", 2],
      ["hash", 2],
      ["number", 3],
      ["hash", 3],
      ["number", 4],
      ["hash", 4],
    ],
  ],
  ["cut off", trail.slice(0, 3), headOf(trail), [["head", undefined]]],
  ["all gone", [], headOf(trail), [["head", undefined]]],
  ["longer than said", trail, trail[2]?.hash, [["head", undefined]]],
  ["an old head", trail, "none", [["head", undefined]]],
])("told: %s", (_, tampered, head, faults) => {
  expect(verifyTrail(tampered, head).map(({ kind, place }) => [kind, place])).toEqual(faults);
});

test("the sentences name entry, input and what happened", () => {
  expect(verifyTrail(replaced(2, { new: 9 }))[0]?.sentence).toMatch(/^Entry 2 of the trail \(b\)/);
  expect(verifyTrail(trail.slice(0, 3), headOf(trail))[0]?.sentence).toMatch(/cut off/);
});
