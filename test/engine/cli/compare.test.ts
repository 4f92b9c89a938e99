import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { run } from "../../../engine/cli/run.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import { readWorkbookFile } from "../../../engine/workbook/read/read-file.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity, fenceJob } from "../../support/fence.js";
import { fenceModel, fenceWorkbook } from "../../support/fence-bid.js";

let folder: string;
let agreed: string;
let changed: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-compare-"));
  agreed = join(folder, "agreed.xlsx");
  changed = join(folder, "changed.xlsx");
  await writeFile(agreed, await fenceWorkbook());
  const taller = { ...fenceJob, inputs: { ...fenceJob.inputs, height: 6 } };
  const values = calculate(fenceModel, fenceGiven(fenceModel, taller));
  await writeFile(changed, await writeWorkbook(fenceModel, values, fenceIdentity(fenceModel)));
});
afterAll(() => rm(folder, { recursive: true }));

async function compare(...args: string[]): Promise<{ status: number; out: string; err: string }> {
  let [out, err] = ["", ""];
  const voices = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
  };
  const status = await run(["compare", ...args], [fence], voices);
  return { status, out, err };
}

test("two workbooks, on the terminal", async () => {
  const { status, out } = await compare(agreed, changed);
  expect(status).toBe(0);
  expect(out).toContain("| Height (height) | 5.50 ft | 6.00 ft | not in the trail |");
});

test("to a workbook and to Markdown", async () => {
  const xlsx = join(folder, "order.xlsx");
  const md = join(folder, "order.md");
  expect((await compare(agreed, changed, "-o", xlsx)).out).toBe(`Written: ${xlsx}\n`);
  expect((await readWorkbookFile(xlsx)).sheets).toHaveLength(2);
  await compare(agreed, changed, "--customer", "-o", md);
  expect((await readFile(md, "utf8")).startsWith("# Change order, job F")).toBe(true);
});

test("a change order of a job whose checks fail is not to be handed out, and is told so", async () => {
  const bad = join(folder, "bad.xlsx");
  const job = { ...fenceJob, inputs: { ...fenceJob.inputs, height: 12, wind: 200 } };
  const values = calculate(fenceModel, fenceGiven(fenceModel, job));
  await writeFile(bad, await writeWorkbook(fenceModel, values, fenceIdentity(fenceModel)));
  const { status, err } = await compare(agreed, bad, "--customer", "-o", join(folder, "bad.md"));
  expect(status).toBe(1);
  expect(err).toContain("Not to be handed out yet");
});

test("as JSON", async () => {
  const told = JSON.parse((await compare(agreed, changed, "--json")).out);
  expect(told.inputs[0]).toMatchObject({ id: "height", old: 5.5, new: 6 });
});

test.each([[["order.pdf"], "must end in .xlsx or .md"]])(
  "another kind of file is refused before anything is read",
  async ([name = ""], sentence) => {
    const { status, err } = await compare("nothing.json", "nothing.json", "-o", name);
    expect(status).toBe(2);
    expect(err).toContain(sentence);
  },
);
