import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { valuesOf } from "../../engine/book/values.js";
import { calculate } from "../../engine/evaluate/calculate.js";
import { compile } from "../../engine/template/compile.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { plantWrongValues } from "../support/plant.js";
import { toy, toyBook, toyIdentity, toyJob } from "../support/toy.js";
import { compareWith } from "./differences.js";
import { recalculateInGnumeric } from "./gnumeric.js";

// What the comparison of the demos rests on: Gnumeric recalculates when told to, and wrong values show.

let folder: string;
let right: Uint8Array;
let planted: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-gnumeric-"));
  const model = compile(toy, "us");
  right = await writeWorkbook(
    model,
    calculate(model, valuesOf(model, toyJob, toyBook)),
    toyIdentity,
  );
  planted = join(folder, "planted.xlsx");
  await writeFile(planted, plantWrongValues(right).bytes);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test("every planted value comes back mended", async () => {
  const [mended = ""] = await recalculateInGnumeric([planted], join(folder, "mended"));
  const { compared, differences } = await compareWith(right, mended);
  expect(differences).toEqual([]);
  expect(compared).toBeGreaterThan(150);
});

test("and does not where Gnumeric is not told to recalculate: the comparison sees it", async () => {
  const [kept = ""] = await recalculateInGnumeric([planted], join(folder, "kept"), false);
  const { compared, differences } = await compareWith(right, kept);
  expect(differences.length).toBe(compared);
});

test("a file that is no workbook is reported", async () => {
  const broken = join(folder, "broken.xlsx");
  await writeFile(broken, "PK\u0003\u0004 no zip");
  await expect(recalculateInGnumeric([broken], join(folder, "out"))).rejects.toThrow();
  await expect(recalculateInGnumeric([planted], folder)).rejects.toThrow("overwrite itself");
});
