import { copyFile, mkdir, mkdtemp, writeFile } from "node:fs/promises";
import { availableParallelism, cpus, loadavg } from "node:os";
import { basename, join } from "node:path";
import { tradeOf } from "../../engine/rerun/trade.js";
import { modelOf } from "../../engine/template/models.js";
import type { Template } from "../../engine/template/template.js";
import { templates } from "../../sheets/templates/index.js";
import { randomJob } from "../support/random-job.js";
import { dearer, makeRecords, makeWorkbooks } from "./make.js";
import type { Measured } from "./measured.js";
import { stages } from "./stages.js";

/** What the bench works with: where it writes and speaks, and how it runs commands. */
export interface Bench {
  readonly folder: string;
  readonly say: (line: string) => void;
  /** Runs a rillbook command and tells what it took. */
  readonly measured: (args: readonly string[]) => Promise<Measured>;
  /** Has LibreOffice recalculate files into a folder. */
  readonly office: (into: string, files: readonly string[]) => Promise<void>;
  /** Path of the office book. */
  readonly prices: string;
  /** The most jobs, and how many workbooks. */
  readonly most: number;
  readonly bookCount: number;
  /** How often each workbook stands in the largest run. */
  readonly copies: number;
}

const figure = (value: number, decimals = 2) =>
  value.toLocaleString("en-US", {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });

/** Prints how fast old jobs are calculated, and where the time goes. Asserts nothing. */
export async function bench(at: Bench): Promise<void> {
  const { folder, say, measured, most, bookCount, copies, prices: old } = at;
  const template = templates[0] as Template;
  const model = modelOf(template, "us");
  const book = await tradeOf(templates).readBook(old);
  const prices = join(folder, "next.json");
  await writeFile(prices, JSON.stringify(dearer(book)));
  const [cpu] = cpus();
  say(
    `${cpu?.model}, ${availableParallelism()} processors, load ${figure(loadavg()[0] ?? 0, 1)}; Node ${process.version}; template ${template.name} ${template.version}: ${model.order.length} formulas`,
  );

  say("\nFrom job records (before and now; 1 in 200 and the first 3 by both evaluators):");
  const rerun = (...args: string[]) =>
    measured([
      "rerun",
      ...args,
      "--office",
      prices,
      "-o",
      join(folder, `out-${args.length}-${Math.random()}.xlsx`),
    ]);
  const sizes = [1, 100, 1000, 10_000].filter((size) => size <= most);
  const took = new Map<number, number>();
  for (const size of sizes) {
    const into = join(folder, `records-${size}`);
    await makeRecords(into, model, book, old, size);
    const { seconds, peak } = await rerun(into);
    took.set(size, seconds);
    say(
      `  ${size} jobs: ${figure(seconds)} s, ${figure(size / seconds, 1)} jobs/s, ${size === 1 ? "" : `start left out ${figure((size - 1) / (seconds - (took.get(1) ?? 0)), 1)} jobs/s, `}peak ${figure(peak, 0)} MB`,
    );
  }
  const start = took.get(1) ?? 0;
  const last = sizes.at(-1) as number;
  const recordRate = last / (took.get(last) as number);
  const recordRateRunning = (last - 1) / ((took.get(last) as number) - start);

  say("\nFrom workbooks, and LibreOffice recalculating the same ones in one call:");
  const bids = join(folder, "bids");
  const paths = await makeWorkbooks(bids, model, book, bookCount);
  const one = await rerun(paths[0] as string);
  const all = await rerun(bids);
  const fromBooks = bookCount / all.seconds;
  const fromBooksRunning = (bookCount - 1) / (all.seconds - one.seconds);
  say(
    `  rillbook: ${bookCount} workbooks ${figure(all.seconds)} s (one: ${figure(one.seconds)} s), ${figure(fromBooks, 1)} jobs/s, start left out ${figure(fromBooksRunning, 1)} jobs/s, peak ${figure(all.peak, 0)} MB`,
  );
  const many = join(folder, "bids-many");
  await copyMany(paths, many, copies);
  const lots = await rerun(many);
  const lotsCount = bookCount * copies;
  const lotsRate = lotsCount / lots.seconds;
  const lotsRunning = (lotsCount - 1) / (lots.seconds - one.seconds);
  say(
    `  rillbook, each of them ${copies} times: ${lotsCount} workbooks ${figure(lots.seconds)} s, ${figure(lotsRate, 1)} jobs/s, start left out ${figure(lotsRunning, 1)} jobs/s, peak ${figure(lots.peak, 0)} MB`,
  );
  const [officeOne, officeAll] = [await office(at, [paths[0] as string]), await office(at, paths)];
  const officeRate = bookCount / officeAll;
  const officeRateRunning = (bookCount - 1) / (officeAll - officeOne);
  say(
    `  LibreOffice: ${bookCount} workbooks ${figure(officeAll)} s (one: ${figure(officeOne)} s), ${figure(officeRate, 2)} jobs/s, start left out ${figure(officeRateRunning, 2)} jobs/s`,
  );
  say(
    `  records against LibreOffice: ${figure(recordRate / officeRate, 0)} times; both starts left out ${figure(recordRateRunning / officeRateRunning, 0)} times`,
  );
  say(
    `  the same workbooks against LibreOffice: ${figure(fromBooks / officeRate, 1)} times; both starts left out ${figure(fromBooksRunning / officeRateRunning, 1)} times`,
  );
  say(
    `  ${lotsCount} workbooks against LibreOffice's rate: ${figure(lotsRate / officeRate, 1)} times; both starts left out ${figure(lotsRunning / officeRateRunning, 1)} times`,
  );

  const weighed = await weighing(at, model, book);
  say(`\nweigh, 10,000 draws of 6 ranges, start included: ${figure(weighed)} s`);

  say("\nWhere the time goes, ms a job in one thread:");
  const records = Array.from({ length: Math.min(60, last) }, (_, i) =>
    join(folder, `records-${last}/0`, `B-${i}.json`),
  );
  for (const [stage, ms] of await stages(model, book, templates, records, paths.slice(0, 4))) {
    say(`  ${stage}: ${figure(ms)}`);
  }
}

async function copyMany(paths: readonly string[], into: string, times: number): Promise<void> {
  await mkdir(into);
  for (let i = 0; i < times; i++) {
    for (const path of paths) await copyFile(path, join(into, `${i}-${basename(path)}`));
  }
}

async function office(at: Bench, files: readonly string[]): Promise<number> {
  const into = await mkdtemp(join(at.folder, "office-"));
  const begun = performance.now();
  await at.office(into, files);
  return (performance.now() - begun) / 1000;
}

async function weighing(
  { folder, measured, prices }: Bench,
  model: ReturnType<typeof modelOf>,
  book: Parameters<typeof makeRecords>[2],
): Promise<number> {
  const job = randomJob(model, book, 1);
  const names = [
    "main_length",
    "basin_depth",
    "basin_length",
    "strip_depth",
    "contingency_share",
    "rain_stops_work",
  ];
  const ranges = Object.fromEntries(
    names.map((name) => {
      const value = job.inputs[name] as number;
      return [name, { low: value * 0.95, likely: value, high: Math.min(value * 1.1, value + 0.9) }];
    }),
  );
  await mkdir(join(folder, "weigh"), { recursive: true });
  const path = join(folder, "weigh/job.json");
  await writeFile(path, JSON.stringify({ ...job, prices, ranges }));
  return (await measured(["weigh", path])).seconds;
}
