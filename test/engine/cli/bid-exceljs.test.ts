import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, expect, test } from "vitest";
import * as t from "../../../engine/template/index.js";
import { fenceBook, fenceJob } from "../../support/fence.js";
import { spoken } from "../../support/spoken.js";
import { fenceThree } from "../rerun/templates.js";

/** The invented fence with a drawing. */
const drawn = t.template({
  ...fenceThree,
  sheets: [
    ...fenceThree.sheets,
    t.sheet("Drawn", "Drawn.", [
      t.chart("Runs", "Length", "Posts", [
        { label: "Run", x: "runs.run", y: "runs.posts", marks: "points" },
      ]),
    ]),
  ],
});

let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-exceljs-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Only exceljs writes the styles of a feature of one program. */
const byExceljs = (parts: Readonly<Record<string, Uint8Array>>) =>
  strFromU8(parts["xl/styles.xml"] as Uint8Array).includes("<extLst>");

// that each part is spelled alike, is asked of whole bids in test/sheets/as-exceljs.test.ts
test("a bid written by exceljs has the same parts, its charts among them, and audits clean", async () => {
  const job = join(folder, "job.json");
  const { mark: _, ...book } = fenceBook;
  await writeFile(join(folder, "prices.json"), JSON.stringify(book));
  await writeFile(job, JSON.stringify({ ...fenceJob, office: "prices.json" }));
  const written = async (name: string, ...options: string[]) => {
    const { status, err } = await spoken(
      ["bid", job, "-o", join(folder, name), ...options],
      [drawn],
    );
    expect([status, err]).toEqual([expect.toBeOneOf([0, 1]), err]);
    return unzipSync(await readFile(join(folder, name)));
  };
  const own = await written("own.xlsx");
  const other = await written("exceljs.xlsx", "--exceljs");
  expect([byExceljs(own), byExceljs(other)]).toEqual([false, true]);
  expect(Object.keys(other)).toEqual(Object.keys(own));
  expect(Object.keys(other)).toContain("xl/charts/chart1.xml");
  expect(await spoken(["audit", join(folder, "exceljs.xlsx")], [drawn])).toMatchObject({
    out: expect.stringContaining("CLEAN"),
  });
});
