import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { fenceBook, fenceJob } from "../../support/fence.js";
import { fenceWorkbook } from "../../support/fence-bid.js";
import { spoken } from "../../support/spoken.js";
import { fenceThree } from "../rerun/templates.js";

let folder: string;
const at = (name: string) => join(folder, name);
const rillbook = (...args: string[]) => spoken(args, [fenceThree]);

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-show-"));
  const { mark: _, ...book } = fenceBook;
  await writeFile(at("book.json"), JSON.stringify(book));
  const { runs: _runs, paint: _paint, ...inputs } = fenceJob.inputs;
  const job = { ...fenceJob, office: "book.json" };
  await writeFile(at("bare.json"), JSON.stringify({ ...job, inputs }));
  await writeFile(at("job.json"), JSON.stringify(job));
  await writeFile(at("bid.xlsx"), await fenceWorkbook());
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test("a table without rows: that it has none, and how one is added", async () => {
  const { status, out } = await rillbook("show", at("bare.json"), "runs");
  expect(status).toBe(0);
  expect(out).toMatch(
    /^runs: no row is in use\. To add one: rillbook set <job> "runs\.label\[1\]=…" --by <who> --from <where from>, or Runs!\w+ in its workbook\.\n$/,
  );
  expect(JSON.parse((await rillbook("show", at("bare.json"), "runs", "--json")).out)).toEqual({
    runs: [],
  });
  expect((await rillbook("show", at("job.json"), "runs")).out).toMatch(
    /^runs:\n {2}row +1 +2 +3\n/,
  );
});
