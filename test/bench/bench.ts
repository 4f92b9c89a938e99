import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { tradeOf } from "../../engine/rerun/trade.js";
import { modelOf } from "../../engine/template/models.js";
import type { Template } from "../../engine/template/template.js";
import { commandTimes } from "./commands.js";
import { dearer, makeRecords, makeWorkbooks } from "./make.js";
import type { Measured } from "./measured.js";
import { type Files, reruns } from "./reruns.js";
import type { Size } from "./sizes.js";
import { stages } from "./stages.js";
import type { Table } from "./table.js";
import { weighing } from "./weighing.js";

/** The trade that is measured. */
export interface Subject {
  readonly templates: readonly Template[];
  /** The file of the largest job, beside the office book. */
  readonly job: string;
  /** Inputs of that job that `weigh` draws. */
  readonly ranged: readonly string[];
  /** An input and its new value, as `set` takes them. */
  readonly change: string;
}

/** What the bench works with: where it writes, how it runs programs, how much it does. */
export interface Bench {
  readonly folder: string;
  readonly size: Size;
  readonly subject: Subject;
  /** Runs a rillbook command and tells what it took. */
  readonly measured: (args: readonly string[]) => Promise<Measured>;
  /**
   * Has one process of LibreOffice recalculate and store files. In its first start, as after an update, it tries out
   * how it draws before anything else, which takes longer than a usual start.
   */
  readonly office: (files: readonly string[], start: "usual" | "first") => Promise<void>;
  /** Has one process of Gnumeric do so with a file. */
  readonly gnumeric: (file: string) => Promise<void>;
  /** Path of the office book, which lies among the demo jobs. */
  readonly prices: string;
}

/** Jobs of which the stages are timed. */
const staged = 30;

/** Measures, and gives a table after the other as it is done. Asserts nothing. */
export async function* bench(at: Bench): AsyncGenerator<Table> {
  const { templates } = at.subject;
  const template = templates[0] as Template;
  const model = modelOf(template, "us");
  const book = await tradeOf(templates).readBook(at.prices);
  const files = await filesFor(at, model, book);
  for (const processes of at.size.processes) yield await reruns(at, files, processes);
  yield await weighing(at);
  yield await commandTimes(at);
  const [jobs = 1] = at.size.jobs;
  const records = Array.from({ length: Math.min(staged, jobs) }, (_, i) =>
    join(files.records.get(jobs) as string, "0", `B-${i}.json`),
  );
  yield await stages(model, book, templates, records, files.paths.slice(0, 4));
}

async function filesFor(
  { folder, size, prices }: Bench,
  ...[model, book]: [Parameters<typeof makeRecords>[1], Parameters<typeof makeRecords>[2]]
): Promise<Files> {
  await mkdir(folder, { recursive: true });
  const next = join(folder, "next.json");
  await writeFile(next, JSON.stringify(dearer(book)));
  const records = new Map<number, string>();
  for (const jobs of [...size.jobs, ...size.once]) {
    const into = join(folder, `records-${jobs}`);
    await makeRecords(into, model, book, prices, jobs);
    records.set(jobs, into);
  }
  const workbooks = join(folder, "bids");
  const paths = await makeWorkbooks(workbooks, model, book, size.workbooks);
  return { records, workbooks, paths, prices: next };
}
