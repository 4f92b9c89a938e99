import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, expect, test } from "vitest";
import { templates } from "../../../sheets/templates/index.js";
import { demoFolder } from "../../support/demo.js";
import { spoken } from "../../support/spoken.js";

let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-exceljs-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const bid = (output: string, ...options: string[]) =>
  spoken(["bid", join(demoFolder, "garden-corner.json"), "-o", output, ...options], templates);

test("a bid written by exceljs has the same parts, its charts among them, and audits clean", async () => {
  const [own, other] = [join(folder, "own.xlsx"), join(folder, "exceljs.xlsx")];
  expect(await bid(own)).toMatchObject({ status: 0 });
  expect(await bid(other, "--exceljs")).toMatchObject({ status: 0 });
  const [parts, others] = await Promise.all(
    [own, other].map(async (file) => Object.keys(unzipSync(await readFile(file)))),
  );
  expect(others).toEqual(parts);
  expect(await spoken(["audit", other], templates)).toMatchObject({
    out: expect.stringContaining("CLEAN"),
  });
});
