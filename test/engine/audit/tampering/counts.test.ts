import { expect, test } from "vitest";
import { cellCases } from "./cases/cells.js";
import { crowdCases } from "./cases/crowd.js";
import { formatCases } from "./cases/format.js";
import { hiddenCases } from "./cases/hidden.js";
import { layoutCases } from "./cases/layout.js";
import { manyCases } from "./cases/many.js";
import { moreSightCases } from "./cases/more-sight.js";
import { originCases } from "./cases/origins.js";
import { pageCases } from "./cases/page.js";
import { sealCases } from "./cases/seal.js";
import { sightCases } from "./cases/sight.js";
import type { Told } from "./run.js";

const all: Told[] = [
  cellCases,
  originCases,
  sightCases,
  formatCases,
  hiddenCases,
  manyCases,
  moreSightCases,
  pageCases,
  layoutCases,
  sealCases,
  crowdCases,
].flat();

test("at least sixty classes, each told apart by its words", () => {
  expect(new Set(all.map(({ what }) => what)).size).toBe(all.length);
  expect(all.length).toBeGreaterThanOrEqual(60);
});

test("of those that change a figure that is shown or calculated, one in twenty may be missed", () => {
  const figures = all.filter(({ figure }) => figure);
  const missed = figures.filter(({ verdict }) => verdict !== "found");
  expect(figures.length).toBeGreaterThanOrEqual(30);
  expect(missed.length / figures.length).toBeLessThanOrEqual(0.05);
});

test("none of the harmless ones is accused, and what is out of reach says why", () => {
  expect(all.filter(({ harmless, verdict }) => harmless && verdict === "found")).toEqual([]);
  expect(
    all.filter(({ verdict, why }) => (verdict === "out of reach") !== (why !== undefined)),
  ).toEqual([]);
});
