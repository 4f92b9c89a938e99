import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { agree, heldBy } from "../../engine/audit/subject.js";
import { valuesOf } from "../../engine/book/values.js";
import { calculate } from "../../engine/evaluate/calculate.js";
import { takeWorkbook } from "../../engine/take/take.js";
import { matchWorkbook } from "../../engine/workbook/match/match.js";
import { readWorkbookFile } from "../../engine/workbook/read/read-file.js";
import { templates } from "../../sheets/templates/index.js";
import { bidOf, demoFolder } from "../support/demo.js";
import { takeSteps } from "./soffice.js";
import type { Step } from "./steps.js";

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-take-demo-"));
});
afterAll(() => rm(folder, { recursive: true }));

test("a demo bid edited in LibreOffice, a line put in above its falls, a fall added: the same figures", async () => {
  const { model, job, book, bytes } = await bidOf(join(demoFolder, "hillside-stream.json"));
  const made = join(folder, "made.xlsx");
  await writeFile(made, bytes);
  const falls = model.placed.find(({ block }) => block.kind === "table" && block.name === "falls");
  const added: [string, number | string][] = [
    ["falls.name", "Added fall"],
    ["falls.level", 3],
    ["falls.width", 1.75],
    ["falls.drop", 1.25],
    ["falls.look", "normal sheet"],
    ["falls.lip_type", "rounded stone"],
    ["falls.open_ends", 1],
  ];
  const steps: Step[] = [
    { kind: "set", name: "energy_rate", value: 0.215 },
    { kind: "set", name: "main_length", value: 56.5 },
    { kind: "insert-row", sheet: falls?.sheet ?? "", row: falls?.top ?? 0 },
    ...added.map(([name, value]): Step => ({ kind: "set", name: `${name}[5]`, value })),
  ];
  const out = join(folder, "edited.xlsx");
  await takeSteps(made, steps, out);
  const content = await readWorkbookFile(out);
  const into = { record: job, file: "hillside-stream.json" };
  const taker = { by: "A", time: "2026-03-04T05:06:07.089Z" };
  const taken = takeWorkbook(content, templates, "edited.xlsx", taker, into);
  expect(taken.findings).toEqual([]);
  expect(Object.fromEntries(taken.entries.map((one) => [one.input, one.new]))).toEqual({
    energy_rate: 0.215,
    main_length: 56.5,
    ...Object.fromEntries(added.map(([name, value]) => [`${name}[5]`, value])),
  });
  const values = calculate(model, valuesOf(model, taken.job, book));
  const { at } = matchWorkbook(content, model);
  const differing = model.order.flatMap((cell) => {
    const shown = heldBy(cell, at.get(cell.id)?.cell.value ?? null);
    const ours = values[cell.index] ?? null;
    return agree(shown, ours) ? [] : [[cell.id, shown, ours]];
  });
  expect(differing).toEqual([]);
});
