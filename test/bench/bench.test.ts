import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { templates } from "../../sheets/templates/index.js";
import { spoken } from "../support/spoken.js";
import { bench } from "./bench.js";
import { sizes } from "./sizes.js";
import { markdown, type Table } from "./table.js";

test("the bench runs to its end, at its smallest", { timeout: 600_000 }, async () => {
  const folder = await mkdtemp(join(tmpdir(), "rillbook-bench-test-"));
  const tables: Table[] = [];
  const commands: string[] = [];
  const recalculated: string[] = [];
  try {
    const measured = bench({
      ...{ folder, size: sizes.tiny },
      measured: async (args) => {
        const { status, err } = await spoken(args, templates);
        expect([args, status, err]).toEqual([args, expect.toBeOneOf([0, 1]), err]);
        commands.push(args[0] as string);
        return { seconds: 1, peak: 1 };
      },
      office: async (files) => void recalculated.push(...files),
      gnumeric: async (file) => void recalculated.push(file),
      prices: fileURLToPath(new URL("../../sheets/demo/office-book.json", import.meta.url)),
    });
    for await (const table of measured) tables.push(table);
  } finally {
    await rm(folder, { recursive: true });
  }
  const single = ["bid", "show", "set", "trace", "names", "start", "audit", "take"];
  // rerun and weigh have tables of their own
  expect(commands).toEqual(["rerun", "rerun", "weigh", ...single]);
  expect(recalculated).toHaveLength(5);
  for (const table of tables)
    expect(table.rows.map((row) => row.length)).toEqual(table.rows.map(() => table.heads.length));
  expect(markdown(tables[0] as Table)).toMatch(/^\| 2 records \|/m);
  expect(markdown(tables.at(-1) as Table)).toMatch(/^\| second evaluator/m);
});
