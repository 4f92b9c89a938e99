import { expect, test } from "vitest";
import { type Import, importsOf } from "./imports.js";

/**
 * The rooms of the trade, from the ground up: each imports what stands before it. `brought` is the
 * frame of the parts: what a part may bring, by which all parts are written. `assembled` puts
 * parts together, and `templates` names them.
 */
const rooms = [
  "vocabulary",
  "tables",
  "learning",
  "plan",
  "brought",
  "part",
  "assembled",
  "templates",
  "sheets",
];

/** Parts that are made of what another part declares, each with why. All others keep to themselves. */
const madeOf: Readonly<Record<string, readonly string[]>> = {
  lines: ["main"], // laid at one rate, with one page of notes
  pump: ["balance"], // the chart draws what the network takes
  "stream-dig": ["stream"], // a cut for each run and pool
  price: ["materials"], // options priced as materials are
  papers: ["materials", "price"], // the orders list their lines
  built: ["papers"], // an invoice for each order
};

/** The files that put parts together. */
const assembling = ["sheets/parts/assemble.ts", "sheets/parts/whole.ts"];

const imports = importsOf(["sheets"]).filter(({ to }) => to.startsWith("sheets/"));
const told = ({ from, to }: Import) => `${from} imports ${to}`;

function roomOf(file: string): string {
  const [, room = "", inner = "", more] = file.split("/");
  if (room.endsWith(".ts")) return "sheets";
  if (room !== "parts") return room;
  if (more !== undefined) return "part";
  return assembling.includes(file) || inner === "" ? "assembled" : "brought";
}

/** The part in whose folder a file stands. */
const partOf = (file: string): string | undefined => /^sheets\/parts\/([^/]+)\//.exec(file)?.[1];

test("every room of the sheets has its place in the order", () => {
  const found = new Set(imports.flatMap(({ from, to }) => [roomOf(from), roomOf(to)]));
  expect([...found].filter((room) => !rooms.includes(room))).toEqual([]);
  expect(imports.length).toBeGreaterThan(300);
});

test("no file of the sheets imports from a room above its own", () => {
  const climbs = imports.filter(
    ({ from, to }) => rooms.indexOf(roomOf(to)) > rooms.indexOf(roomOf(from)),
  );
  expect(climbs.map(told)).toEqual([]);
});

test("a part imports nothing of another one, but where it is made of it", () => {
  const inside = imports.filter(({ from, to }) => {
    const [own, other] = [partOf(from), partOf(to)];
    return (
      own !== undefined && other !== undefined && own !== other && !madeOf[own]?.includes(other)
    );
  });
  expect(inside.map(told)).toEqual([]);
});

test("what is declared of parts made of others is so", () => {
  const used = (own: string, other: string) =>
    imports.some(({ from, to }) => partOf(from) === own && partOf(to) === other);
  const idle = Object.entries(madeOf).flatMap(([own, others]) =>
    others.flatMap((other) => (used(own, other) ? [] : [`${own} of ${other}`])),
  );
  expect(idle).toEqual([]);
});
