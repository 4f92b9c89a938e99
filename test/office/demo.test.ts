import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { bidOf, demoJobs } from "../support/demo.js";
import { plantWrongValues } from "../support/plant.js";
import { recalculate } from "./soffice.js";

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-demo-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

function agrees(mine: unknown, theirs: unknown): boolean {
  if (typeof mine === "number" && typeof theirs === "number") {
    return Math.abs(mine - theirs) <= 1e-9 * Math.max(1, Math.abs(mine));
  }
  // LibreOffice saves yes/no results of some formulas as 1 and 0
  if (typeof mine === "boolean" && typeof theirs === "number") return Number(mine) === theirs;
  return (mine ?? "") === (theirs ?? "");
}

describe.each(demoJobs().map((file) => [basename(file), file]))("%s", (_, file) => {
  test("LibreOffice mends every planted value to ours", async () => {
    const { bytes, model } = await bidOf(file);
    const { bytes: wrong, planted } = plantWrongValues(bytes);
    const formulas = model.order.length;
    expect(planted).toBeGreaterThanOrEqual(formulas);
    const path = join(folder, `${basename(file, ".json")}.xlsx`);
    await writeFile(path, wrong);
    const [mended] = await recalculate([path], join(folder, "out"));
    const mine = readWorkbook(bytes);
    const theirs = readWorkbook(new Uint8Array(await readFile(mended as string)));
    const differences: string[] = [];
    let compared = 0;
    for (const sheet of mine.sheets) {
      const other = theirs.sheets.find(({ name }) => name === sheet.name);
      for (const [address, cell] of sheet.cells) {
        if (cell.formula === undefined) continue;
        compared += 1;
        const value = other?.cells.get(address)?.value;
        if (!agrees(cell.value, value)) {
          differences.push(
            `${sheet.name}!${address} =${cell.formula}: ours ${cell.value}, theirs ${value}`,
          );
        }
      }
    }
    console.log(`${basename(file)}: ${compared} formula cells compared with LibreOffice`);
    expect(differences.slice(0, 20)).toEqual([]);
    expect(compared).toBeGreaterThan(1000);
  });
});
