import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, expect, test } from "vitest";
import { run } from "../../../engine/cli/run.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import type { JobRecord } from "../../../engine/job/record.js";
import { appended } from "../../../engine/job/trail/chain.js";
import { verifyTrail } from "../../../engine/job/trail/verify.js";
import { validateJob } from "../../../engine/job/validate.js";
import { modelOf } from "../../../engine/template/models.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity } from "../../support/fence.js";
import { zipped } from "../workbook/read/build.js";
import { hostile } from "../workbook/read/hostile-files.js";

const model = modelOf(fence, "us");
let parts: Record<string, string>;
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-take-fuzz-"));
  const time = "2026-03-04T05:06:07.089Z";
  const trail = appended(
    [],
    [
      { time, by: "A", input: "height", old: 4, new: 5.5, unit: "ft", from: "drawing" },
      { time, by: "A", input: "runs.run[1]", old: null, new: 61.7, unit: "ft", from: "assumption" },
    ],
  );
  const identity = { ...fenceIdentity(model), trail };
  const bytes = await writeWorkbook(model, calculate(model, fenceGiven(model)), identity);
  parts = Object.fromEntries(
    Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)]),
  );
});
afterAll(() => rm(folder, { recursive: true }));

interface Outcome {
  readonly status: number;
  readonly err: string;
  readonly record: string | undefined;
}

async function take(bytes: Uint8Array): Promise<Outcome> {
  const file = join(folder, "bid.xlsx");
  await rm(join(folder, "bid.json"), { force: true });
  await writeFile(file, bytes);
  let err = "";
  const status = await run(["take", file, "--by", "A"], [fence], {
    out: () => undefined,
    err: (text) => {
      err += text;
    },
  });
  const left = (await readdir(folder)).filter((name) => name !== "bid.xlsx");
  expect(left.filter((name) => name !== "bid.json")).toEqual([]);
  const written = left.includes("bid.json");
  return {
    status,
    err,
    record: written ? await readFile(join(folder, "bid.json"), "utf8") : undefined,
  };
}

/** Taken in with a sound record, or refused with sentences and nothing written: never anything else. */
function settle({ status, err, record }: Outcome, what: string): void {
  expect([what, status, err]).toEqual([what, expect.toBeOneOf([0, 1, 2]), err]);
  if (status === 2) {
    expect(err, what).toMatch(/^[a-z]+(-[a-z0-9]+)+: .*[.?]\n$/s);
    expect(err, what).not.toMatch(/is undefined|\[object/);
    expect(record, what).toBeUndefined();
    return;
  }
  const job = JSON.parse(record ?? "") as JobRecord;
  expect(verifyTrail(validateJob(model, job, what).trail ?? []), what).toEqual([]);
  expect(
    err.split("\n").filter((line) => line !== "" && !line.startsWith("not taken in: ")),
  ).toEqual([]);
  expect(status, what).toBe(err === "" ? 0 : 1);
}

/** A small repeatable generator (linear congruential, constants of Numerical Recipes). */
function generator(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

const contents = [
  "<v>0</v>",
  "<v>-7.5</v>",
  "<v>1e300</v>",
  "<v>3</v>",
  "",
  "<f>1/0</f><v>1</v>",
  "<f>height*2</f><v>8</v>",
  "<f>IF(</f><v>2</v>",
  "<f>&quot;</f><v>2</v>",
  "<f>#REF!+__proto__</f>",
  `<f>${"(".repeat(400)}1${")".repeat(400)}</f><v>1</v>`,
];
const typed: readonly (readonly [string, string])[] = [
  ["e", "<v>#REF!</v>"],
  ["str", "<f>soil</f><v>loam</v>"],
  ["b", "<v>1</v>"],
  ["inlineStr", "<is><t>=cmd</t></is>"],
  ["inlineStr", "<is><t>__proto__</t></is>"],
  ["inlineStr", `<is><t>${"x".repeat(3000)}</t></is>`],
  ["d", "<v>2026-02-03</v>"],
];

type Random = (below: number) => number;
type Mutation = (xml: string, random: Random) => string;

/** Puts something else in the place of one match, chosen at random. */
const one =
  (pattern: RegExp, change: (found: string, random: Random) => string): Mutation =>
  (xml, random) => {
    const all = [...xml.matchAll(pattern)];
    const found = all[random(all.length)];
    if (found === undefined) return xml;
    return (
      xml.slice(0, found.index) +
      change(found[0], random) +
      xml.slice(found.index + found[0].length)
    );
  };

const pick = <T>(list: readonly T[], random: Random): T => list[random(list.length)] as T;
const cell = /<c r="[^>]*?(?:\/>|>.*?<\/c>)/g;

const sheetMutations: readonly Mutation[] = [
  one(cell, (found, random) => {
    const open = (/^<c r="[A-Z]+\d+"(?: s="\d+")?/.exec(found) as RegExpExecArray)[0];
    if (random(2) === 0) return `${open}>${pick(contents, random)}</c>`;
    const [type, inside] = pick(typed, random);
    return `${open} t="${type}">${inside}</c>`;
  }),
  one(cell, () => ""),
  one(/<row .*?<\/row>/gs, () => ""),
  one(/<v>[^<]*<\/v>/g, (_, random) => `<v>${random(1000) / 8}</v>`),
  one(/<f>[^<]*<\/f>/g, (found, random) => found.replace(/\d/, String(random(10)))),
];
const bookMutations: readonly Mutation[] = [
  one(/<definedName .*?<\/definedName>/gs, () => ""),
  one(/\$\d+/g, (_, random) => `$${1 + random(60)}`),
  one(/\$[A-Z]+\$/g, (_, random) => `$${pick(["A", "B", "Z", "XFD"], random)}$`),
  one(
    /'[A-Za-z]+'!/g,
    (_, random) => `'${pick(["Site", "Runs", "Price", "Trail", "None"], random)}'!`,
  ),
  one(/<definedName name="[^"]*"/g, (found, random) =>
    random(2) === 0 ? `${found} localSheetId="2"` : '<definedName name="__proto__"',
  ),
  one(/<sheet [^>]*>/g, (found, random) =>
    random(2) === 0 ? "" : found.replace(/name="[^"]*"/, 'name="Other"'),
  ),
];
const propertyMutations: readonly Mutation[] = [
  one(/<property .*?<\/property>/gs, () => ""),
  one(
    /<vt:lpwstr>[^<]*<\/vt:lpwstr>/g,
    (_, random) =>
      `<vt:lpwstr>${pick(["", "si", "3", "none", "__proto__", "1e999"], random)}</vt:lpwstr>`,
  ),
];

function mutated(seed: number): Uint8Array {
  const random = generator(seed);
  const changed = { ...parts };
  const sheets = Object.keys(parts).filter((name) => /^xl\/worksheets\/sheet\d+\.xml$/.test(name));
  for (let left = 1 + random(3); left > 0; left--) {
    const kind = random(10);
    const part =
      kind < 6 ? pick(sheets, random) : kind < 9 ? "xl/workbook.xml" : "docProps/custom.xml";
    const mutations = kind < 6 ? sheetMutations : kind < 9 ? bookMutations : propertyMutations;
    changed[part] = pick(mutations, random)(changed[part] as string, random);
  }
  return zipped(changed, 0);
}

/** `npm run fuzz` tries such workbooks for as long as one likes. */
const rounds = Number(process.env.TAKE_ROUNDS ?? 120);

test("mutated workbooks: taken in soundly, or refused with a sentence", {
  timeout: 120_000,
}, async () => {
  const seen = { 0: 0, 1: 0, 2: 0 };
  for (let seed = 0; seed < rounds; seed++) {
    const outcome = await take(mutated(seed));
    settle(outcome, `seed ${seed}`);
    seen[outcome.status as 0 | 1 | 2] += 1;
  }
  expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(rounds / 15);
});

// each of them is held to its refusal in the tests of the reader; a fourth shows that take uses it
const some = hostile.filter((_, i) => i % 4 === 0);
test("hostile files are refused before anything is written", { timeout: 120_000 }, async () => {
  for (const [name, make] of some) {
    const outcome = await take(make());
    expect([name, outcome.status]).toEqual([name, 2]);
    settle(outcome, name);
  }
});
