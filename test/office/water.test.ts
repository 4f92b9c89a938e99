import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import type { InputValues } from "../../engine/job/record.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { randomNetworks } from "../network/generate.js";
import { sheetsAnswers } from "../network/sheets.js";
import { plantWrongValues } from "../support/plant.js";
import { type Answers, answersOf } from "../support/water.js";
import { yard, yardPumps } from "../support/water-jobs.js";
import { recalculate } from "./soffice.js";

const identity = {
  ...{ job: "water", template: "water", version: 1 },
  ...{ book: "none", bookAsOf: "2026-01-01", bookMark: "" },
};

/** Metric copy of the job: lengths of the yard, rounded as on a metric drawing. */
const metricYard: InputValues = {
  ...yard,
  falls: [
    { name: "Top", level: 1, width: 0.9, drop: 0.6 },
    { name: "Low", level: 2, width: 1.5, drop: 0.45, open_ends: 2 },
  ],
  runs: [{ name: "Bend", after_level: 1, length: 4 }],
  pools: [{ name: "Pool", before_level: 2, length: 2 }],
  pipe_lines: [
    { name: "Head", outlet_level: 1, pipe_size: "2 in", length: 8 },
    { name: "Side", outlet_level: 2, pipe_size: "1-1/2 in", length: 3 },
  ],
};

/** Jobs whose every formula cell LibreOffice must find alike: plain, fixed speed, metric, blank, networks. */
const jobs: [string, () => Answers][] = [
  ["yard", () => answersOf(yard, yardPumps)],
  ["fixed speed", () => answersOf({ ...yard, pump_choice: "F" }, yardPumps)],
  ["metric", () => answersOf(metricYard, yardPumps, { units: "si" })],
  ["blank", () => answersOf({}, [])],
  ...randomNetworks(77, 4).map((network, i): [string, () => Answers] => [
    `network ${i + 1}`,
    () => sheetsAnswers(network, {}),
  ]),
];

function agrees(mine: unknown, theirs: unknown): boolean {
  if (typeof mine === "number" && typeof theirs === "number") {
    return Math.abs(mine - theirs) <= 1e-9 * Math.max(1, Math.abs(mine));
  }
  // LibreOffice saves yes/no results of some formulas as 1 and 0
  if (typeof mine === "boolean" && typeof theirs === "number") return Number(mine) === theirs;
  return (mine ?? "") === (theirs ?? "");
}

test("LibreOffice finds the same water", async () => {
  const folder = await mkdtemp(join(tmpdir(), "rillbook-water-"));
  try {
    const made: { name: string; file: string; bytes: Uint8Array }[] = [];
    for (const [name, solve] of jobs) {
      const { model, values } = solve();
      const bytes = await writeWorkbook(model, values, { ...identity, units: model.system });
      const file = join(folder, `${name}.xlsx`);
      await writeFile(file, plantWrongValues(bytes).bytes);
      made.push({ name, file, bytes });
    }
    const mended = await recalculate(
      made.map(({ file }) => file),
      join(folder, "out"),
    );
    const differences: string[] = [];
    let compared = 0;
    for (const [i, { name, bytes }] of made.entries()) {
      const theirs = readWorkbook(new Uint8Array(await readFile(mended[i] as string)));
      for (const sheet of readWorkbook(bytes).sheets) {
        const other = theirs.sheets.find((one) => one.name === sheet.name);
        for (const [address, cell] of sheet.cells) {
          if (cell.formula === undefined) continue;
          compared += 1;
          const value = other?.cells.get(address)?.value;
          if (agrees(cell.value, value)) continue;
          differences.push(`${name}: ${sheet.name}!${address} is ${cell.value}, ${value}`);
        }
      }
    }
    expect(differences.slice(0, 20)).toEqual([]);
    expect(compared).toBeGreaterThan(20_000);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});
