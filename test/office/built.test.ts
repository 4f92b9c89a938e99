import { copyFile, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { loadJob } from "../../engine/book/load-job.js";
import { calculate } from "../../engine/evaluate/calculate.js";
import type { JobRecord } from "../../engine/job/record.js";
import { matchWorkbook } from "../../engine/workbook/match/match.js";
import { readWorkbookFile } from "../../engine/workbook/read/read-file.js";
import { templates } from "../../sheets/templates/index.js";
import { bidOf, demoFolder } from "../support/demo.js";
import { spoken } from "../support/spoken.js";
import { takeSteps } from "./soffice.js";
import type { Step } from "./steps.js";

// What a job took, typed into the workbook of its bid as an office would, through LibreOffice; taken in, and looked
// back at. The yard and its hours are invented.
const typed: readonly (readonly [name: string, keys: string, value?: number | string])[] = [
  ["job_state", "built"],
  ["decided_on", "11/16/2026", "2026-11-16"],
  ["told_by", "Invented office manager"],
  ["told_on", "5/20/2027", "2027-05-20"],
  ["work_began", "5/3/2027", "2027-05-03"],
  ["work_ended", "5/10/2027", "2027-05-10"],
  ["days_taken", "5", 5],
  ["rain_days_taken", "1", 1],
  ["price_charged", "15550", 15550],
  ["labor_rate_paid", "43.5", 43.5],
  ["built_tasks.quantity_done[15]", "330", 330],
  ["built_tasks.hours_taken[15]", "9", 9],
  ["built_tasks.note[15]", "Underlayment laid twice."],
  ["built_tasks.hours_taken[5]", "2.5", 2.5],
  ["built_tasks.machine_taken[5]", "1.5", 1.5],
  ["daily_hours_taken", "14", 14],
  ["built_others.task[1]", "Dig out an old footing"],
  ["built_others.hours_taken[1]", "3", 3],
  ["built_invoices.supplier[1]", "Demo stone yard"],
  ["built_invoices.invoiced[1]", "1010.5", 1010.5],
  ["built_hires.invoiced[10]", "1200", 1200],
  ["tax_paid", "250", 250],
  ["built_lines.flow_metered[1]", "48", 48],
  ["power_metered", "530", 530],
];

let folder: string;
const at = (name: string) => join(folder, name);
const rillbook = (...args: string[]) => spoken(args, templates);

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-built-"));
  for (const name of ["garden-corner.json", "office-book.json"]) {
    await copyFile(join(demoFolder, name), at(name));
  }
  const { bytes } = await bidOf(join(demoFolder, "garden-corner.json"));
  await writeFile(at("bid.xlsx"), bytes);
  const steps = typed.map(([name, keys]): Step => ({ kind: "type", name, keys }));
  await takeSteps(at("bid.xlsx"), steps, at("typed.xlsx"), "en-US", 280);
}, 300_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

test("typed through LibreOffice: found clean, taken in under the name that the sheet gives, and the price stays", {
  timeout: 480_000,
}, async () => {
  const { out } = await rillbook("audit", at("typed.xlsx"), "--json");
  const { findings } = JSON.parse(out) as { findings: Record<string, string>[] };
  const graver = findings.filter(
    ({ grade, code }) => grade !== "to know" && code !== "input-untold",
  );
  expect(graver).toEqual([]);

  const record = at("garden-corner.json");
  const taken = await rillbook("take", at("typed.xlsx"), "-o", record, "--by", "Invented clerk");
  expect([taken.status, taken.err]).toEqual([0, ""]);
  const { trail = [] } = JSON.parse(await readFile(record, "utf8")) as JobRecord;
  expect(Object.fromEntries(trail.map((one) => [one.input, one.new]))).toEqual(
    Object.fromEntries(typed.map(([name, keys, value]) => [name, value ?? keys])),
  );
  expect(new Set(trail.map(({ by, from }) => `${by}: ${from}`))).toEqual(
    new Set(["Invented office manager: told after the work"]),
  );

  // every figure of both sheets as LibreOffice shows it is ours
  const { model, given } = await loadJob(record, templates);
  const values = calculate(model, given);
  const content = await readWorkbookFile(at("typed.xlsx"));
  const { at: places } = matchWorkbook(content, model);
  const shown = model.cells.filter(({ sheet }) => ["Built", "Look back"].includes(sheet));
  const rounded = (value: unknown) =>
    typeof value === "number" ? Number(value.toPrecision(10)) : (value ?? "");
  const differing = shown.flatMap(({ id, index, declaration }) => {
    const theirs = rounded(places.get(id)?.cell.value);
    const ours = rounded(values[index]);
    const isYes = declaration.quantity.kind === "yesno" && typeof theirs === "number";
    return (isYes ? theirs === 1 : theirs) === ours ? [] : [[id, theirs, ours]];
  });
  expect(differing).toEqual([]);
  expect(shown.length).toBeGreaterThan(900);
  const figure = (id: string) => values[model.byId.get(id)?.index as number];
  expect(figure("price")).toBe(15150);
  expect(figure("back_first")).toMatch(
    /^Lay liner .*\(0\.5 by quantity, 3\.0 by rate\)\. Underlayment laid twice\.$/,
  );

  // bid again: now both sheets print, and an audit finds nothing
  await rillbook("bid", record, "-o", at("again.xlsx"));
  const again = JSON.parse(
    (await rillbook("audit", at("again.xlsx"), "--json")).out,
  ) as typeof findings;
  const left = (again as unknown as { findings: typeof findings }).findings;
  expect(left.filter(({ grade }) => grade !== "to know")).toEqual([]);
  expect(left.filter(({ found }) => found === "not printed yet")).toEqual([]);
});
