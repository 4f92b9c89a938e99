import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { repository } from "../../house/repository.js";
import { compiled } from "../../support/compiled.js";

let program: string;
let thread: string;
let right: string;
const folder = mkdtempSync(join(tmpdir(), "rillbook-beside-"));
const target = join(folder, "bid.xlsx");

beforeAll(async () => {
  program = await compiled(
    ...[
      "engine/cli/main.ts",
      "engine/evaluate/judge-thread.ts",
      "engine/index.ts",
      "engine/template/own-imports.ts",
    ],
  );
  const own = { name: "rillbook", type: "module", exports: "./engine/index.js" };
  writeFileSync(join(program, "package.json"), JSON.stringify(own));
  // a small template: its model is compiled anew for each judge, since that is part of what it is made by
  cpSync(join(repository, "test/pack/example"), folder, { recursive: true });
  thread = join(program, "engine/evaluate/judge-thread.js");
  right = readFileSync(thread, "utf8");
});
afterAll(() => {
  for (const one of [program, folder]) rmSync(one, { recursive: true, force: true });
});

/** Writes a bid by the program as built, whose judge is this module. */
function bid(judge: string) {
  writeFileSync(thread, judge);
  const args = ["bid", join(folder, "us.json"), "-o", target];
  const own = ["--template", join(folder, "fence.mjs")];
  return spawnSync(process.execPath, [join(program, "engine/cli/main.js"), ...args, ...own], {
    encoding: "utf8",
  });
}

/** The judge with something done to its list of values. */
const judgeThat = (does: string) =>
  right.replace("judgedValues(task)", `(${does})(judgedValues(task))`);

const faults: [string, () => string, RegExp][] = [
  [
    "differs in one cell",
    () => judgeThat("(v) => [...v.slice(0, -1), 'no such']"),
    /^evaluators-differ: /,
  ],
  ["knows a value less", () => judgeThat("(v) => v.slice(0, -1)"), /^evaluators-differ: /],
  ["fails", () => judgeThat("() => { throw new Error('planted') }"), /^program-fault: .*planted/],
  ["does not load", () => "import './no-such-file.js';", /^program-fault: .*no-such-file/],
  ["ends without a word", () => "process.exit();", /^program-fault: .*judge ended/],
];

test.each(faults)("where the judge beside %s, no bid takes its name", (_, judge, says) => {
  const { status, stderr } = bid(judge());
  expect(stderr).toMatch(says);
  expect(status).toBe(3);
  expect(existsSync(target)).toBe(false);
});

test("where it agrees, the bid is written; where it does not the next time, that bid stays", () => {
  expect(bid(right)).toMatchObject({ status: 0 });
  const written = readFileSync(target);
  expect(bid(judgeThat("(v) => v.slice(1)")).status).toBe(3);
  expect(readFileSync(target).equals(written)).toBe(true);
});
