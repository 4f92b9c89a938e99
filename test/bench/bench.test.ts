import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { template } from "../../engine/template/index.js";
import { fence, fenceBook, fenceJob } from "../support/fence.js";
import { spoken } from "../support/spoken.js";
import { bench, type Subject } from "./bench.js";
import { sizes } from "./sizes.js";
import { markdown, type Table } from "./table.js";

/** The invented fence, with an office book that commands can read. */
const pricedFence = template({
  ...fence,
  roles: { price: "price", cost: "materials", sections: [{ label: "Labor", name: "labor" }] },
  office: [
    {
      ...{ name: "items", sheet: "Items", means: "What is bought." },
      columns: [
        { key: "code", kind: "code", means: "Code", required: true },
        { key: "unit_price", kind: "number", means: "Price", required: true, least: 0 },
        { key: "supplier", kind: "text", means: "Supplier" },
        { key: "good_until", kind: "date", means: "Last day of the quote" },
      ],
      starter: [{ code: "post", unit_price: 1 }],
    },
  ],
});

const fences: Subject = {
  ...{ templates: [pricedFence], job: "job.json", ranged: ["height"], change: "height=6" },
};

// on a small trade: what the commands take of a large one is what the bench is for
test("the bench runs to its end, at its smallest", { timeout: 600_000 }, async () => {
  const folder = await mkdtemp(join(tmpdir(), "rillbook-bench-test-"));
  const given = await mkdtemp(join(tmpdir(), "rillbook-bench-given-"));
  const { mark: _, ...book } = fenceBook;
  await writeFile(join(given, "book.json"), JSON.stringify(book));
  await writeFile(join(given, "job.json"), JSON.stringify({ ...fenceJob, office: "book.json" }));
  const tables: Table[] = [];
  const commands: string[] = [];
  const recalculated: string[] = [];
  try {
    const measured = bench({
      ...{ folder, size: sizes.tiny, subject: fences },
      measured: async (args) => {
        const { status, err } = await spoken(args, fences.templates);
        expect([args, status, err]).toEqual([args, expect.toBeOneOf([0, 1]), err]);
        commands.push(args[0] as string);
        return { seconds: 1, peak: 1 };
      },
      office: async (files) => void recalculated.push(...files),
      gnumeric: async (file) => void recalculated.push(file),
      prices: join(given, "book.json"),
    });
    for await (const table of measured) tables.push(table);
  } finally {
    await rm(folder, { recursive: true });
    await rm(given, { recursive: true });
  }
  const single = ["bid", "show", "set", "trace", "names", "start", "audit", "take"];
  // rerun and weigh have tables of their own
  expect(commands).toEqual(["rerun", "rerun", "weigh", ...single]);
  expect(recalculated).toHaveLength(6);
  for (const table of tables)
    expect(table.rows.map((row) => row.length)).toEqual(table.rows.map(() => table.heads.length));
  expect(markdown(tables[0] as Table)).toMatch(/^\| 2 records \|/m);
  expect(markdown(tables.at(-1) as Table)).toMatch(/^\| second evaluator/m);
});
