import { copyFile, mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { availableParallelism, cpus, loadavg, tmpdir } from "node:os";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { tradeOf } from "../../engine/rerun/trade.js";
import { modelOf } from "../../engine/template/models.js";
import type { Template } from "../../engine/template/template.js";
import { templates } from "../../sheets/templates/index.js";
import { runSoffice } from "../office/run-soffice.js";
import { randomJob } from "../support/random-job.js";
import { dearer, makeRecords, makeWorkbooks } from "./make.js";
import { measured } from "./measured.js";
import { stages } from "./stages.js";

/** `npm run bench -- 1000 8`: the most jobs, and how many workbooks. Prints figures and asserts nothing. */
const [most = 10_000, bookCount = 24] = process.argv.slice(2).map(Number);

const say = (text: string) => process.stdout.write(`${text}\n`);
const figure = (value: number, decimals = 2) =>
  value.toLocaleString("en-US", {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });

/** Code gets faster as it runs, which few files do not show; LibreOffice goes at one rate. */
const copies = 10;

const folder = await mkdtemp(join(tmpdir(), "rillbook-bench-"));
try {
  await bench();
} finally {
  await rm(folder, { recursive: true, force: true });
}

async function bench(): Promise<void> {
  const template = templates[0] as Template;
  const model = modelOf(template, "us");
  const old = fileURLToPath(new URL("../../../../sheets/demo/price-book.json", import.meta.url));
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
      "--prices",
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
  const [officeOne, officeAll] = [await office([paths[0] as string]), await office(paths)];
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

  const weighed = await weighing(model, book, old);
  say(`\nweigh, 10,000 draws of 6 ranges, start included: ${figure(weighed)} s`);

  say("\nWhere the time goes, ms a job in one thread:");
  const records = Array.from({ length: 60 }, (_, i) =>
    join(folder, "records-100/0", `B-${i}.json`),
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

async function office(files: readonly string[]): Promise<number> {
  const into = await mkdtemp(join(folder, "office-"));
  const begun = performance.now();
  await runSoffice(["--convert-to", "xlsx", "--outdir", into, ...files]);
  return (performance.now() - begun) / 1000;
}

async function weighing(
  model: ReturnType<typeof modelOf>,
  book: Parameters<typeof makeRecords>[2],
  prices: string,
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
