import { describe, expect, test } from "vitest";
import { fromUs } from "../../../engine/units/quantity.js";
import { errorsIn, stream, work } from "./bench.js";
import { groundJobs, inSi } from "./jobs.js";

describe.each(groundJobs)("a job with %s", (_, inputs) => {
  test("has no error in any cell, by both evaluators", () => {
    expect(errorsIn(work(inputs, { judged: true }))).toEqual([]);
  });

  test("is the same in SI units, but for the unit", () => {
    const us = work(inputs);
    const si = work(inSi(inputs), { units: "si", judged: true });
    const differ = us.model.cells.filter((cell) => {
      const [a, b] = [us.value(cell.id), si.value(cell.id)];
      const { kind } = cell.declaration.quantity;
      if (kind === "text" || ofItsSystem.test(cell.name)) return false;
      if (typeof a !== "number" || typeof b !== "number") return a !== b;
      const wanted = a * fromUs(cell.declaration.quantity, "si");
      return Math.abs(b - wanted) > 1e-8 * Math.max(1, Math.abs(wanted));
    });
    expect(differ.map(({ id }) => `${id} ${us.value(id)} ${si.value(id)}`)).toEqual([]);
  });
});

/** Plain numbers that each system has in its own units: temperatures by their scale, goods by theirs. */
const ofItsSystem = /^(water|air)_(temperature(_in_book)?|used)$|_buys\.wanted$/;

test("rows that are not in use hold nothing", () => {
  const { model, value } = work(stream);
  for (const cell of model.cells) {
    const inPieces = cell.table === "liner_pieces" && [5, 13, 20].includes(cell.row ?? 0);
    if (!inPieces || cell.declaration.kind === "published") continue;
    expect([0, "", false], cell.id).toContain(value(cell.id));
  }
});

test("what is bought goes by code, in the units of the office book", () => {
  const { model, value, number } = work(stream);
  const lines = ["basin_buys", "liner_buys", "stone_buys", "earthwork_buys"].flatMap((table) =>
    Array.from({ length: model.tables.get(table)?.block.rows ?? 0 }, (_, i) => {
      const at = (column: string) => value(`${table}.${column}[${i + 1}]`);
      return [at("code"), at("unit"), at("wanted")];
    }),
  );
  expect(lines).toContainEqual(["crate", "each", number("crates_needed")]);
  expect(lines).toContainEqual(["liner-45mil", "ft²", number("liner_area_bought")]);
  expect(lines).toContainEqual(["stone-lip", "ton", number("stones.to_buy[1]")]);
  expect(lines).toContainEqual(["gravel-base", "yd³", number("wall_base")]);
  // a job in SI counts what it buys in metric units
  const si = work(inSi(stream), { units: "si" });
  expect(si.value("liner_buys.unit[1]")).toBe("m²");
  const inFeet = si.number("liner_buys.wanted[1]") / 0.3048 ** 2;
  expect(inFeet).toBeCloseTo(number("liner_buys.wanted[1]"), 6);
});
