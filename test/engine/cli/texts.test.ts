import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { appended } from "../../../engine/job/trail/chain.js";
import { fence, fenceJob } from "../../support/fence.js";
import { fenceWorkbook } from "../../support/fence-bid.js";
import { spoken } from "../../support/spoken.js";

// what people gave is shown on a terminal and never obeyed by it, and what no workbook keeps is refused

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-texts-"));
});
afterEach(() => rm(folder, { recursive: true }));

const by = ["--by", "A\u202e", "--from", "drawing"];
const recordWith = async (change: object): Promise<string> => {
  const file = join(folder, "job.json");
  await writeFile(file, JSON.stringify({ ...fenceJob, ...change }));
  return file;
};
const withCustomer = (customer: string) => ({ inputs: { ...fenceJob.inputs, customer } });
const set = (file: string, ...rest: string[]) => spoken(["set", file, ...rest], [fence]);

test("set: marks that turn the writing are shown, and kept in the record", async () => {
  const file = await recordWith({});
  const { status, out } = await set(file, "customer=\u202eeno\u200b", ...by, "--note", "\u009b2J");
  expect(status).toBe(0);
  expect(out).toBe("customer: ⟨U+202E⟩eno⟨U+200B⟩, was Customer One (drawing, by A⟨U+202E⟩: 2J)\n");
  expect(JSON.parse(await readFile(file, "utf8")).inputs.customer).toBe("\u202eeno\u200b");
});

test("set: --json escapes them, and means the same", async () => {
  const file = await recordWith({});
  const { out } = await set(file, "customer=\u202eeno", ...by, "--json");
  expect(out).toContain('"new": "\\u202eeno"');
  expect(JSON.parse(out)[0].new).toBe("\u202eeno");
});

test("set: ends of lines are kept as line feeds, in the record and in the trail", async () => {
  const file = await recordWith({});
  expect((await set(file, "customer=one\r\ntwo", "customer=three\rfour", ...by)).status).toBe(0);
  const { inputs, trail } = JSON.parse(await readFile(file, "utf8"));
  expect(inputs.customer).toBe("three\nfour");
  expect(trail.map((entry: { old: string; new: string }) => [entry.old, entry.new])).toEqual([
    ["Customer One", "one\ntwo"],
    ["one\ntwo", "three\nfour"],
  ]);
});

test.each<[what: string, change: object, sentence: RegExp]>([
  [
    "an input",
    withCustomer("a\u001b[2J"),
    /inputs\.customer holds the character U\+001B \(place 2\)/,
  ],
  [
    "a text in a row",
    {
      inputs: {
        ...fenceJob.inputs,
        runs: [
          { label: "a", run: 1 },
          { label: "\ud83e", run: 2 },
        ],
      },
    },
    /inputs\.runs\.label\[2\] holds the character U\+D83E/,
  ],
  [
    "a text without end",
    withCustomer("a".repeat(100_000)),
    /inputs\.customer has 100000 characters/,
  ],
  ["a job of two lines", { job: "F-1\nPrice: $1" }, /job holds a tab or the end of a line/],
  ["free words", { about: "\u0000" }, /about holds the character U\+0000/],
  [
    "a trail that a workbook would not give back",
    {
      trail: appended(
        [],
        [
          {
            ...{ time: "2026-05-04T09:00:00.000Z", by: "A", input: "customer", old: null },
            ...{ new: "one\r\ntwo", unit: "", from: "drawing" },
          },
        ],
      ),
    },
    /trail\[1\]\.new holds the end of a line as CR/,
  ],
])("a record is refused for %s", async (_, change, sentence) => {
  const { status, err } = await set(await recordWith(change), "height=6", ...by);
  expect(status).toBe(2);
  expect(err).toMatch(sentence);
});

test("errors: a file's name is shown", async () => {
  const { err } = await set(join(folder, "\u001b[2Jnone\u202e.json"), "height=6", ...by);
  expect(err).toMatch(/⟨U\+001B⟩\[2Jnone⟨U\+202E⟩\.json does not exist/);
});

test("start: a name that no record may have is refused, and nothing is written", async () => {
  const file = join(folder, "new.json");
  const { status, err } = await spoken(
    ["start", file, "--job", "F\u001b", "--template", "fence"],
    [fence],
  );
  expect([status, err]).toEqual([2, expect.stringContaining("job holds the character U+001B")]);
  await expect(readFile(file)).rejects.toThrow();
});

test("audit: on the terminal and in the report", async () => {
  const file = join(folder, "a\u202eb.xlsx");
  await writeFile(file, await fenceWorkbook());
  const report = join(folder, "report.md");
  const { out } = await spoken(["audit", file, "--report", report], [fence]);
  const written = await readFile(report, "utf8");
  expect(written).toContain("a⟨U+202E⟩b.xlsx");
  expect(`${out}${written}`).not.toContain("\u202e");
});
