import { cp, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { Bench } from "./bench.js";
import { figure, median, type Table, times } from "./table.js";

/** Every command that works on one job, on the largest demo, each beside LibreOffice's conversion of the same bid in the same round. */
export async function commandTimes(at: Bench): Promise<Table> {
  const { folder, measured, office, size, subject } = at;
  const demo = join(folder, "demo");
  await cp(dirname(at.prices), demo, { recursive: true });
  const commands = commandsIn(folder, join(demo, subject.job), subject.change);
  const found = new Map(Object.keys(commands).map((name) => [name, [] as number[]]));
  const ratios = new Map(Object.keys(commands).map((name) => [name, [] as number[]]));
  const peaks = new Map<string, number>();
  const converted: number[] = [];
  for (let round = 0; round < size.commandRounds; round++) {
    let theirs = 0;
    for (const [name, { args, makes }] of Object.entries(commands)) {
      for (const made of makes) await rm(made, { force: true });
      const { seconds, peak } = await measured(args);
      if (name === "bid") {
        const begun = performance.now();
        await office([args.at(-1) as string]);
        theirs = (performance.now() - begun) / 1000;
        converted.push(theirs);
      }
      found.get(name)?.push(seconds);
      ratios.get(name)?.push(theirs / seconds);
      peaks.set(name, Math.max(peaks.get(name) ?? 0, peak));
    }
  }
  return {
    title: "Each command on one job, the largest demo",
    note: `Whole processes. LibreOffice converts the bid, with a profile of its own, in ${figure(median(converted))} s; medians of ${size.commandRounds} rounds.`,
    heads: ["Command", "s", "peak MB", "LibreOffice's conversion, times"],
    rows: [...found].map(([name, seconds]) => [
      name,
      figure(median(seconds)),
      figure(peaks.get(name) ?? 0, 0),
      times(median(ratios.get(name) ?? []), 1),
    ]),
  };
}

interface Command {
  readonly args: readonly string[];
  /** Files that may not be there when it begins. */
  readonly makes: readonly string[];
}

/** In an order in which each finds what it needs: the bid comes first. */
function commandsIn(
  folder: string,
  job: string,
  change: string,
): Readonly<Record<string, Command>> {
  const [bid, started, taken] = ["bid.xlsx", "new.json", "taken.json"].map((name) =>
    join(folder, name),
  ) as [string, string, string];
  const of = (args: readonly string[], ...makes: string[]): Command => ({ args, makes });
  return {
    bid: of(["bid", job, "-o", bid], bid),
    show: of(["show", job, "price"]),
    set: of(["set", job, change, "--by", "Bench", "--from", "assumption"]),
    trace: of(["trace", job, "price"]),
    names: of(["names"]),
    start: of(["start", started], started),
    audit: of(["audit", bid]),
    take: of(["take", bid, "--by", "Bench", "-o", taken], taken),
  };
}
