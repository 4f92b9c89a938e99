import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { calculateFast } from "../../engine/evaluate/calculate-fast.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { drawFrom, modelFor, simulate, valuesFor } from "../sheets/learning/simulated.js";
import { plantWrongValues } from "../support/plant.js";
import { compareWith } from "./differences.js";
import { recalculateInGnumeric } from "./gnumeric.js";
import { recalculate } from "./soffice.js";

let folder: string;
let bytes: Uint8Array;
let path: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-learned-"));
  path = join(folder, "rates.xlsx");
  const model = modelFor(250);
  const truth = () => ({ theta: -0.2, sigma: 0.3 });
  const { learned, evidence, whole } = simulate(
    { rates: 12, jobs: 15, truth, oldest: 5 },
    drawFrom(5),
  );
  // one row left out, one far off, one of another unit
  const changed = evidence.map((row, i) => ({
    ...row,
    ...(i === 3 ? { reason: "flood" } : {}),
    ...(i === 20 ? { hours: 4000 } : {}),
    ...(i === 40 ? { unit: "ft" } : {}),
  }));
  const given = valuesFor(model, {
    ...{ book_rates: learned, evidence: changed, job_list: whole },
    ways: learned.map(({ code }) => ({ code: code ?? null, method: "machine" })),
  });
  bytes = await writeWorkbook(model, calculateFast(model, given), {
    ...{ job: "Learned", template: model.template.name, version: 1, units: "us" },
    ...{ book: "Invented", bookAsOf: "2027-01-01", bookMark: "" },
  });
  await writeFile(path, plantWrongValues(bytes).bytes);
}, 120_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

test.each([
  ["LibreOffice", recalculate],
  ["Gnumeric", recalculateInGnumeric],
])("%s comes to every learned rate, interval and distance", async (program, save) => {
  const into = join(folder, program);
  await save([path], into);
  const { compared, differences } = await compareWith(bytes, join(into, basename(path)));
  expect(differences.slice(0, 20)).toEqual([]);
  expect(compared).toBeGreaterThan(10_000);
});
