import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Plan } from "../../engine/output/judge.js";
import { outputTo } from "../../engine/output/write.js";
import { editsAgainst } from "../../engine/take/untaken.js";
import { fence } from "../support/fence.js";
import { fenceModel, fenceTrail, fenceValues, fenceWorkbook } from "../support/fence-bid.js";
import { recalculate, takeSteps } from "./soffice.js";

let folder: string;
let made: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-written-over-"));
  made = join(folder, "made.xlsx");
  await writeFile(made, await fenceWorkbook());
});
afterAll(() => rm(folder, { recursive: true }));

const plan: Plan = {
  kind: "bid",
  inputs: [],
  edits: editsAgainst([fence], { model: fenceModel, values: fenceValues, trail: fenceTrail }),
  templates: [fence.name],
};

test("a bid that LibreOffice saved unchanged may be written over", async () => {
  const [saved = ""] = await recalculate([made], join(folder, "saved"));
  await (await outputTo(saved, plan)).write(await fenceWorkbook());
});

test("one in which somebody changed an input there may not", async () => {
  const edited = join(folder, "edited.xlsx");
  await takeSteps(made, [{ kind: "set", name: "height", value: 7 }], edited);
  await expect(outputTo(edited, plan)).rejects.toMatchObject({
    code: "output-edited",
    message: expect.stringContaining("height. Take them in first"),
  });
});
