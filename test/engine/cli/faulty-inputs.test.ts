import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { fence } from "../../support/fence.js";
import { fenceModel, fenceWorkbook } from "../../support/fence-bid.js";
import { spoken } from "../../support/spoken.js";
import { typedOver } from "../../support/typed-over.js";

/** What was typed into a workbook against its rule is told with cell, name, value and rule, to people and programs. */

let folder: string;
let file: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-faulty-"));
  file = join(folder, "faulty.xlsx");
  await writeFile(
    file,
    typedOver(await fenceWorkbook(), fenceModel, { height: 60, soil: "mud", margin: 25 }),
  );
});
afterAll(() => rm(folder, { recursive: true }));

const sentences = [
  /^\S+![A-Z]+\d+ .* \(height\): 60 ft is not .+\.$/m,
  /^\S+![A-Z]+\d+ .* \(soil\): "mud" is not one of .+\.$/m,
  /^\S+![A-Z]+\d+ .* \(margin\): 2500% is not .+\. For 25% type 25% or 0\.25\.$/m,
];
const listed = {
  faultyInputs: expect.arrayContaining([
    expect.objectContaining({ name: "height", value: 60, rule: expect.any(String) }),
    expect.objectContaining({ name: "soil", value: "mud", choices: expect.any(Array) }),
    expect.objectContaining({ name: "margin", value: 25 }),
  ]),
};

test.each([
  ["bid", () => ["-o", join(folder, "bid.xlsx")]],
  ["show", () => ["height"]],
])("%s", async (command, options) => {
  const { err } = await spoken([command, file, ...options()], [fence]);
  for (const sentence of sentences) expect(err).toMatch(sentence);
  const { out } = await spoken([command, file, ...options(), "--json"], [fence]);
  expect(JSON.parse(out)).toMatchObject(listed);
});
