import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { work } from "../sheets/ground/bench.js";
import { groundJobs, inSi } from "../sheets/ground/jobs.js";
import { plantWrongValues } from "../support/plant.js";
import { recalculate } from "./soffice.js";

const identity = {
  ...{ job: "bench", template: "ground-bench", version: 1 },
  ...{ book: "none", bookAsOf: "2026-01-01", bookMark: "" },
};

function agrees(mine: unknown, theirs: unknown): boolean {
  if (typeof mine === "number" && typeof theirs === "number") {
    return Math.abs(mine - theirs) <= 1e-9 * Math.max(1, Math.abs(mine));
  }
  // LibreOffice saves yes/no results of some formulas as 1 and 0
  if (typeof mine === "boolean" && typeof theirs === "number") return Number(mine) === theirs;
  return (mine ?? "") === (theirs ?? "");
}

test("LibreOffice finds the same for each job, in both systems of units", async () => {
  const folder = await mkdtemp(join(tmpdir(), "rillbook-ground-"));
  try {
    const made = await Promise.all(
      groundJobs.flatMap(([_, inputs], i) =>
        (["us", "si"] as const).map(async (units) => {
          const { model, values } = work(units === "si" ? inSi(inputs) : inputs, { units });
          const bytes = await writeWorkbook(model, values, { ...identity, units });
          const file = join(folder, `job-${i}-${units}.xlsx`);
          await writeFile(file, plantWrongValues(bytes).bytes);
          return { file, bytes };
        }),
      ),
    );
    const mended = await recalculate(
      made.map(({ file }) => file),
      join(folder, "out"),
    );
    const differences: string[] = [];
    let compared = 0;
    for (const [i, { file, bytes }] of made.entries()) {
      const theirs = readWorkbook(new Uint8Array(await readFile(mended[i] as string)));
      for (const sheet of readWorkbook(bytes).sheets) {
        const other = theirs.sheets.find(({ name }) => name === sheet.name);
        for (const [address, cell] of sheet.cells) {
          if (cell.formula === undefined) continue;
          compared += 1;
          const value = other?.cells.get(address)?.value;
          if (agrees(cell.value, value)) continue;
          differences.push(
            `${file} ${sheet.name}!${address} =${cell.formula}: ${cell.value}, ${value}`,
          );
        }
      }
    }
    expect(differences.slice(0, 10)).toEqual([]);
    expect(compared).toBeGreaterThan(10_000);
    console.log(`${compared} formula cells of ${made.length} workbooks compared with LibreOffice`);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});
