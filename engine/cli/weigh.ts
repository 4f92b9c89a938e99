import { Command, InvalidArgumentError } from "commander";
import { fittedTables } from "../book/fill.js";
import { type LoadedJob, loadJob } from "../book/load-job.js";
import { RillbookError } from "../errors.js";
import { CellError, type Value } from "../formula/value.js";
import type { Moved } from "../rerun/lines.js";
import { whatMoved } from "../rerun/moved.js";
import { rolesOf } from "../template/role-plan.js";
import type { Example } from "../template/template.js";
import type { Effect, Trial } from "../weigh/effects.js";
import type { LearnedOverrun } from "../weigh/overrun.js";
import type { Percentile, Spread } from "../weigh/simulate.js";
import { type Weighed, weigh, weighedCells } from "../weigh/weigh.js";
import type { Context } from "./context.js";
import { exampleOf } from "./example.js";
import { withJudge } from "./with-judge.js";

interface Options {
  readonly office?: string;
  readonly draws: number;
  readonly seed: number;
  readonly top: number;
  readonly since?: string;
  readonly sinceOffice?: string;
  readonly json?: true;
}

const help = ({ input }: Example) => `
Ranges stand in the job record: "ranges": {"lift": {"low": 9, "likely": 10, "high": 14}}; a row's
input is named as ${input}[2]. Each ranged input is drawn by itself from a triangular
distribution between low and high with its peak at likely; the same seed gives the same draws.
Where the office book carries the overrun of its own built jobs (rillbook learn --take), each draw has
one of its own (lognormal), in place of ranges of the pace of the work.

What moved the price since another record of the job (--since): each changed input and each
changed row of the office book is put in alone, the others as they were; what is left of the whole
change comes only from several of them together.

Examples:
  rillbook weigh hillside.json
  rillbook weigh hillside.json --since hillside-2026.json --since-office 2026.xlsx`;

/** `rillbook weigh`: what a bid's price and cost hang on. */
export function weighCommand(context: Context): Command {
  return new Command("weigh")
    .description("tell which inputs and prices move a bid most, and how its cost spreads")
    .argument("<job>", "job record (JSON)")
    .option("--office <file>", "office book, instead of the one the job names")
    .option("--draws <n>", "draws of the simulation", whole, 10_000)
    .option("--seed <n>", "seed of the simulation", whole, 1)
    .option("--top <n>", "how many inputs and prices to show", whole, 20)
    .option("--since <job>", "what moved the price since this other record of the job")
    .option("--since-office <file>", "the office book of that other record")
    .option("--json", "as JSON")
    .addHelpText("after", help(exampleOf(context)))
    .action(async (file: string, options: Options) => {
      const loaded = await loadJob(file, context.templates, options.office);
      const weighed = await withJudge(context, async (calculate) => {
        const { values, agreed } = calculate(
          loaded.model,
          loaded.given,
          weighedCells(loaded.model),
        );
        // from its source the program has no threads
        const threads = context.templatesModule === undefined ? 1 : 0;
        const found = await weigh(loaded, values, options.draws, options.seed, threads);
        await agreed;
        return found;
      });
      const moved =
        options.since === undefined
          ? undefined
          : movedSince(
              await loadJob(options.since, context.templates, options.sinceOffice),
              loaded,
              options.since,
            );
      if (options.json) {
        context.json({ ...weighed, ...(moved && { moved }) }, 2);
      } else tell(context.out, weighed, moved, options.top);
    });
}

function movedSince(old: LoadedJob, now: LoadedJob, file: string): Moved {
  if (old.model !== now.model) {
    throw new RillbookError(
      "templates-differ",
      `${file} has another template, version or system of units than the job: formulas moved the price as well. Bring both to one version.`,
    );
  }
  const { model, book, given } = now;
  const price = rolesOf(model).price.name;
  const moved = whatMoved(model, old.given, given, price, fittedTables(model, book));
  if (moved !== undefined) return moved;
  throw new RillbookError(
    "price-unknown",
    `The price of ${file}, or of the job itself, cannot be calculated. Correct its failed checks first.`,
  );
}

function tell(out: Context["out"], weighed: Weighed, moved: Moved | undefined, top: number): void {
  const { price, cost, contingency, effects, swings, spread, overrun } = weighed;
  out(`Price ${shown(price)}, cost ${shown(cost)}\n\n`);
  out("Price before rounding, with 10% less and 10% more of (one, where only whole numbers go):\n");
  for (const effect of effects.slice(0, top)) out(`  ${effectLine(effect)}\n`);
  if (effects.length > top) out(`  and ${effects.length - top} with less effect\n`);
  for (const { name, label, unit, range, atLow, atHigh } of swings) {
    out(
      `\n${name} (${label}) from ${range.low} to ${range.high} ${unit}: price ${shown(atLow)} to ${shown(atHigh)}`,
    );
  }
  if (swings.length > 0) out("\n");
  if (overrun !== undefined) tellOverrun(out, overrun);
  if (spread !== undefined) {
    const rangesDrawn = swings.length > (overrun?.notDrawn.length ?? 0);
    tellSpread(out, spread, cost, contingency, overrun, rangesDrawn);
  } else if (swings.length === 0) {
    out(`\nThe job states no ranges, so its cost has no spread (see --help).\n`);
  } else
    out("\nNo draw of the ranges could be calculated: the cost has an error in all of them.\n");
  if (moved === undefined) return;
  out(
    `\nPrice ${shown(moved.from)} before, ${shown(moved.to)} now. Alone, the others as they were:\n`,
  );
  for (const { item, by } of moved.items) out(`  ${item} moves it by ${signed(by)}\n`);
  out(`  only together: ${signed(moved.together)}\n`);
}

function effectLine({ name, label, value, unit, less, more }: Effect): string {
  const kept = (figure: number) => Number(figure.toPrecision(6));
  const by = ({ tried, price }: Trial) =>
    tried === value
      ? "at its limit"
      : `${kept(tried)} ${typeof price === "number" ? signed(price) : price}`;
  const now = `${kept(value)}${unit === "" ? "" : ` ${unit}`}`;
  return `${name} (${label}), ${now}: ${by(less)}; ${by(more)}`;
}

function tellSpread(
  out: Context["out"],
  spread: Spread,
  cost: Value,
  contingency: Value | undefined,
  overrun: LearnedOverrun | undefined,
  rangesDrawn: boolean,
): void {
  const { draws, seed, failed, mean, within } = spread;
  const ranges = "the ranges (triangular, each by itself)";
  const both = rangesDrawn ? `that overrun and ${ranges}` : "that overrun";
  const drawn = overrun === undefined ? ranges : both;
  const lines = (["p10", "p50", "p80", "p90"] as const).map(
    (key) => `  ${key.toUpperCase()} ${between(spread[key])}\n`,
  );
  out(
    `\nCost, without contingency, over ${draws.toLocaleString("en-US")} draws of ${drawn}, seed ${seed}: mean ${shown(mean)}\n`,
  );
  for (const line of lines) out(line);
  if (failed > 0) out(`  ${failed} draws could not be calculated and are left out\n`);
  if (typeof cost !== "number") return;
  const kept = typeof contingency === "number" ? contingency : 0;
  out(
    `From the bid's own cost (${shown(cost - kept)}) to P80: ${signed(spread.p80.value - cost + kept)}`,
  );
  if (contingency === undefined) out("\n");
  else {
    out(
      `; the bid carries a contingency of ${shown(contingency)}, and ${((within ?? 0) * 100).toFixed(0)}% of the draws stay within both\n`,
    );
  }
}

/** What the labor of the draws rests on: jobs of the office, and no range that somebody assumed. */
function tellOverrun(out: Context["out"], overrun: LearnedOverrun): void {
  const { half, fifth, jobs, source, moves, notDrawn } = overrun;
  const share = (value: number) => `${value > 0 ? "+" : ""}${(value * 100).toFixed(1)}%`;
  out(
    `\nThe work runs over its plan as the office's own ${jobs} built ${jobs === 1 ? "job" : "jobs"} did: ${share(half)} in half of them, ${share(fifth)} in one of five (lognormal; moves ${moves}). ${source}\n`,
  );
  if (notDrawn.length > 0) {
    out(`Not drawn, since that stands in their place: the ranges of ${notDrawn.join(", ")}.\n`);
  }
}

const between = ({ value, from, to }: Percentile) =>
  `${shown(value)} (95% sure between ${shown(from)} and ${shown(to)} for so many draws)`;

function shown(value: Value): string {
  if (typeof value !== "number") return value instanceof CellError ? value.code : String(value);
  const size = Math.abs(value).toLocaleString("en-US", {
    minimumFractionDigits: 2,
    maximumFractionDigits: 2,
  });
  return `${value < 0 ? "-" : ""}$${size}`;
}

const signed = (value: number) => `${value > 0 ? "+" : ""}${shown(value)}`;

function whole(written: string): number {
  if (/^\d{1,7}$/.test(written)) return Number(written);
  throw new InvalidArgumentError("It must be a whole number.");
}
