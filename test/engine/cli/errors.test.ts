import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { run } from "../../../engine/cli/run.js";
import * as t from "../../../engine/template/index.js";
import { tiny } from "../../support/tiny.js";

const template = {
  ...tiny([
    t.lines("Given", { part: t.input(t.number, "Part") }),
    t.lines("Made", {
      share: t.calc(t.number, "1/part", "Share"),
      twice: t.calc(t.number, "2*share", "Twice"),
      enough: t.check("twice>0", "{twice} is too little", { label: "Too little", level: "look" }),
    }),
  ]),
  headline: ["twice"],
  roles: { price: "twice", cost: "share", sections: [] },
};

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-errors-"));
  await writeFile(
    join(folder, "book.json"),
    JSON.stringify({ name: "Invented", asOf: "2026-05-01", tables: {} }),
  );
  for (const part of [0, 4]) {
    const record = { rillbook: 1, job: `E-${part}`, template: "tiny", version: 1, units: "us" };
    const job = { ...record, office: "book.json", inputs: { part } };
    await writeFile(join(folder, `job-${part}.json`), JSON.stringify(job));
  }
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function rillbook(...args: string[]) {
  const said = { out: "", err: "" };
  const status = await run(args, [template], {
    out: (text) => {
      said.out += text;
    },
    err: (text) => {
      said.err += text;
    },
  });
  return { status, ...said };
}
const at = (name: string) => join(folder, name);

const told = [
  "the bid does not stand: 4 cells are in error. It begins with",
  "  #DIV/0! in share (sheet Page, Share)",
  'Correct the inputs that it needs: rillbook trace <job> "share" shows them.',
].join("\n");

test("bid names the cell in which an error arose, and ends with 1", async () => {
  const { status, err } = await rillbook("bid", at("job-0.json"), "-o", at("bid.xlsx"));
  expect(err).toContain(told);
  expect(err).toContain("warning: Page, Too little: This cannot be told: #DIV/0! in share.");
  expect(status).toBe(1);
  const sound = await rillbook("bid", at("job-4.json"), "-o", at("bid.xlsx"));
  expect(sound).toMatchObject({ status: 0, err: "" });
});

test("bid --json has them too", async () => {
  const args = ["-o", at("bid.xlsx"), "--json"];
  const { out } = await rillbook("bid", at("job-0.json"), ...args);
  expect(JSON.parse(out)).toMatchObject({
    stands: false,
    errors: [{ name: "share", sheet: "Page", error: "#DIV/0!", cells: 4 }],
  });
  const sound = await rillbook("bid", at("job-4.json"), ...args);
  expect(JSON.parse(sound.out)).toMatchObject({ stands: true, errors: [] });
});

test("show tells them whatever is asked for", async () => {
  const { status, out, err } = await rillbook("show", at("job-0.json"), "part");
  expect({ status, out }).toEqual({ status: 1, out: "part  0.00\n" });
  expect(err).toContain(told);
  expect(await rillbook("show", at("job-4.json"), "twice")).toMatchObject({ status: 0, err: "" });
});

test("rerun ends with 1 and says how many jobs do not stand", async () => {
  const prices = ["--office", at("book.json"), "--workers", "1", "--json"];
  const { status, out, err } = await rillbook(
    "rerun",
    at("job-0.json"),
    at("job-4.json"),
    ...prices,
  );
  expect(err).toContain("1 job with cells in error: the bid does not stand.");
  const lines = out
    .split("\n")
    .filter(Boolean)
    .map((line) => JSON.parse(line));
  expect(lines.flatMap(({ inError }) => inError ?? [])).toEqual([
    { cells: 4, roots: [{ name: "share", error: "#DIV/0!" }] },
  ]);
  expect(status).toBe(1);
  expect(await rillbook("rerun", at("job-4.json"), ...prices)).toMatchObject({ status: 0 });
});
