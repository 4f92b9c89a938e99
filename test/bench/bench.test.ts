import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { templates } from "../../sheets/templates/index.js";
import { spoken } from "../support/spoken.js";
import { bench } from "./bench.js";

test("the bench runs to its end, at its smallest", { timeout: 600_000 }, async () => {
  const folder = await mkdtemp(join(tmpdir(), "rillbook-bench-test-"));
  const [lines, commands]: [string[], string[]] = [[], []];
  await bench({
    ...{ folder, most: 1, bookCount: 1, copies: 1 },
    say: (line) => lines.push(line),
    measured: async ([command = "", ...args]) => {
      // a further worker makes all ready once more
      const few = command === "weigh" ? ["--draws", "50"] : ["--workers", "1"];
      const { status, err } = await spoken([command, ...args, ...few], templates);
      expect([command, status, err]).toEqual([command, expect.toBeOneOf([0, 1]), err]);
      commands.push(command);
      return { seconds: 1, peak: 1 };
    },
    office: async () => undefined,
    prices: fileURLToPath(new URL("../../sheets/demo/office-book.json", import.meta.url)),
  }).finally(() => rm(folder, { recursive: true }));
  expect(commands).toEqual(["rerun", "rerun", "rerun", "rerun", "weigh"]);
  expect(lines.at(-1)).toMatch(/second evaluator/);
});
