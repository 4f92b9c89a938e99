import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { valuesOf } from "../../engine/book/values.js";
import { calculate } from "../../engine/evaluate/calculate.js";
import { cellAt } from "../../engine/workbook/read/lookup.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { bidOf, demoFolder } from "../support/demo.js";
import { editCells } from "./soffice.js";

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-edited-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test("a fall made wider in the written file moves the price to what the same job gives", async () => {
  const { bytes, model, job, book, values } = await bidOf(join(demoFolder, "garden-corner.json"));
  const falls = job.inputs.falls as readonly Record<string, number>[];
  const width = (falls[0]?.width ?? 0) + 1.5;
  const path = join(folder, "bid.xlsx");
  const edited = join(folder, "edited.xlsx");
  await writeFile(path, bytes);
  await editCells(path, [{ name: "falls.width[1]", value: width }], edited);

  const wider = {
    ...job,
    inputs: { ...job.inputs, falls: [{ ...falls[0], width }, ...falls.slice(1)] },
  };
  const expected = calculate(model, valuesOf(model, wider as typeof job, book));
  const content = readWorkbook(new Uint8Array(await readFile(edited)));
  for (const name of model.template.headline) {
    const cell = model.byId.get(name);
    if (cell === undefined) throw new Error(`No cell ${name}.`);
    const mine = expected[cell.index] as number;
    expect(cellAt(content, name).cell.value, name).toBeCloseTo(mine, 6);
  }
  const price = model.byId.get("price")?.index as number;
  expect(expected[price]).not.toBe(values[price]);
});
