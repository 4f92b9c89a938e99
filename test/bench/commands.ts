import { cp, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { Bench } from "./bench.js";
import { figure, median, type Table, times } from "./table.js";

/** LibreOffice's starts that a command is held against. */
const starts = ["usual", "first"] as const;

/** Every command that works on one job, on the largest demo, each beside LibreOffice's conversion of the same bid in the same round. */
export async function commandTimes(at: Bench): Promise<Table> {
  const { folder, measured, office, size, subject } = at;
  const demo = join(folder, "demo");
  await cp(dirname(at.prices), demo, { recursive: true });
  const commands = commandsIn(folder, join(demo, subject.job), subject.change);
  const found = new Map(Object.keys(commands).map((name) => [name, [] as number[]]));
  const peaks = new Map<string, number>();
  const converted = { usual: [] as number[], first: [] as number[] };
  for (let round = 0; round < size.commandRounds; round++) {
    for (const [name, { args, makes }] of Object.entries(commands)) {
      for (const made of makes) await rm(made, { force: true });
      const { seconds, peak } = await measured(args);
      found.get(name)?.push(seconds);
      peaks.set(name, Math.max(peaks.get(name) ?? 0, peak));
      if (name !== "bid") continue;
      for (const start of starts) {
        const begun = performance.now();
        await office([args.at(-1) as string], start);
        converted[start].push((performance.now() - begun) / 1000);
      }
    }
  }
  /** Round by round, so that both have met the same load. */
  const ratio = (seconds: readonly number[], theirs: readonly number[]) =>
    times(median(seconds.map((one, i) => (theirs[i] as number) / one)), 1);
  const [usual, first] = starts.map((start) => figure(median(converted[start])));
  return {
    title: "Each command on one job, the largest demo",
    note: `Whole processes. LibreOffice converts the bid, with a profile of its own, in ${usual} s; in its first start, as after an update, in ${first} s. Medians of ${size.commandRounds} rounds.`,
    heads: ["Command", "s", "peak MB", "LibreOffice, times", "its first start, times"],
    rows: [...found].map(([name, seconds]) => [
      name,
      figure(median(seconds)),
      figure(peaks.get(name) ?? 0, 0),
      ...starts.map((start) => ratio(seconds, converted[start])),
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
