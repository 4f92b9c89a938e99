import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { beyondLimits } from "../support/beyond-limits.js";
import { bidOf, type DemoBid, demoJobs } from "../support/demo.js";
import { plantWrongValues } from "../support/plant.js";
import { compareWith } from "./differences.js";
import { recalculateInGnumeric } from "./gnumeric.js";
import { recalculate } from "./soffice.js";

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-demo-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const programs: [name: string, run: typeof recalculateInGnumeric][] = [
  ["LibreOffice", (files, out) => recalculate(files, out)],
  ["Gnumeric", recalculateInGnumeric],
];

describe.each(demoJobs().map((file) => [basename(file, ".json"), file]))("%s", (name, file) => {
  let bid: DemoBid;
  const path = () => join(folder, `${name}.xlsx`);
  beforeAll(async () => {
    bid = await bidOf(file);
    const { bytes, planted } = plantWrongValues(bid.bytes);
    expect(planted).toBeGreaterThanOrEqual(bid.model.order.length);
    await writeFile(path(), bytes);
  });

  test.each(programs)("%s mends every planted value to ours", async (program, run) => {
    const [mended] = await run([path()], join(folder, program));
    const { compared, differences } = await compareWith(bid.bytes, mended as string);
    console.log(`${name}: ${compared} formula cells compared with ${program}`);
    expect(differences.slice(0, 20)).toEqual([]);
    expect(compared).toBeGreaterThan(1000);
  });

  test("keeps to the limits of the format", () => {
    expect(beyondLimits(bid.bytes)).toEqual([]);
  });
});
