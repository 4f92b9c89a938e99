import { expect, test } from "vitest";
import { type Import, importsOf, roomOf } from "./imports.js";

/**
 * The rooms of the engine, from the ground up: each imports what stands before it, and nothing
 * else. A use case looks into another one through its `index.ts` alone.
 */
const rooms = [
  "engine",
  "text",
  "units",
  "formula",
  "template",
  "evaluate",
  "workbook/read",
  "job",
  "stored",
  "workbook/match",
  "workbook/write",
  "workbook/pictures",
  "output",
  "book",
  "seal",
  ...["audit", "set", "take", "trace", "compare", "rerun", "weigh", "print"],
  "learn",
  "cli",
  "api",
];

const useCases = ["audit", "set", "take", "trace", "compare", "rerun", "weigh", "print", "learn"];

/** The one file in which engine and trade meet: the program that people start. */
const program = "engine/cli/main.ts";

/** What is promised to whoever imports the package: it stands over all rooms. */
const face = "engine/index.ts";

const imports = importsOf(["engine", "sheets"]);
const told = ({ from, to }: Import) => `${from} imports ${to}`;

test("every room of the engine has its place in the order", () => {
  const found = new Set(imports.map(({ from }) => from).filter((file) => /^engine/.test(file)));
  expect([...new Set([...found].map(roomOf))].filter((room) => !rooms.includes(room))).toEqual([]);
});

test("no file imports from a room above its own", () => {
  const climbs = imports.filter(({ from, to }) => {
    if (from === face || !from.startsWith("engine/") || !to.startsWith("engine/")) return false;
    return rooms.indexOf(roomOf(to)) > rooms.indexOf(roomOf(from));
  });
  expect(climbs.map(told)).toEqual([]);
});

test("a use case is read through its index only", () => {
  const inside = imports.filter(({ from, to }) => {
    const [own, other] = [roomOf(from), roomOf(to)];
    return (
      own !== other &&
      useCases.includes(own) &&
      useCases.includes(other) &&
      !to.endsWith("/index.ts")
    );
  });
  expect(inside.map(told)).toEqual([]);
});

test("the engine does not know the trade", () => {
  const known = imports.filter(
    ({ from, to }) => from.startsWith("engine/") && to.startsWith("sheets/") && from !== program,
  );
  expect(known.map(told)).toEqual([]);
});

test("no room imports the face of the package", () => {
  expect(imports.filter(({ to }) => to === face).map(told)).toEqual([]);
});

test("no imports go round in a circle, types included", () => {
  expect(circles(imports).map((files) => files.join(" -> "))).toEqual([]);
});

/** Each circle of files once, as the way that was found round it. */
function circles(all: readonly Import[]): string[][] {
  const next = new Map<string, string[]>();
  for (const { from, to } of all) next.set(from, [...(next.get(from) ?? []), to]);
  const done = new Set<string>();
  const found: string[][] = [];
  const visit = (file: string, way: readonly string[]): void => {
    if (way.includes(file)) found.push([...way.slice(way.indexOf(file)), file]);
    else if (!done.has(file)) {
      for (const to of next.get(file) ?? []) visit(to, [...way, file]);
      done.add(file);
    }
  };
  for (const file of next.keys()) visit(file, []);
  return found;
}
