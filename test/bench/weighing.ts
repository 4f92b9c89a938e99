import { readFile, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { Bench } from "./bench.js";
import { figure, median, type Table } from "./table.js";

/** `weigh` of the largest demo with ranges for a few of its inputs. */
export async function weighing(at: Bench): Promise<Table> {
  const { folder, measured, prices, size, subject } = at;
  const demo = await readFile(join(dirname(prices), subject.job), "utf8");
  const job = JSON.parse(demo) as { inputs: Record<string, unknown> };
  const ranges = Object.fromEntries(
    subject.ranged.flatMap((name) => {
      const likely = job.inputs[name];
      if (typeof likely !== "number") return [];
      return [[name, { low: likely * 0.95, likely, high: likely * 1.05 }]];
    }),
  );
  const path = join(folder, "weigh.json");
  await writeFile(path, JSON.stringify({ ...job, office: prices, ranges }));
  const all = [];
  for (let round = 0; round < size.rounds; round++) {
    all.push(await measured(["weigh", path, "--draws", String(size.draws)]));
  }
  const seconds = median(all.map((one) => one.seconds));
  const peak = Math.max(...all.map((one) => one.peak));
  return {
    title: "weigh",
    note: `The largest demo, start included; medians of ${size.rounds} rounds.`,
    heads: ["Draws", "ranges", "s", "peak MB"],
    rows: [
      [figure(size.draws, 0), String(Object.keys(ranges).length), figure(seconds), figure(peak, 0)],
    ],
  };
}
