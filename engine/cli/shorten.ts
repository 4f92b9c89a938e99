import { dirname, resolve } from "node:path";
import { Command } from "commander";
import { RillbookError } from "../errors.js";
import { readJob } from "../job/read.js";
import { recordText } from "../job/save.js";
import { shortened } from "../job/trail/shortened.js";
import { validateJob } from "../job/validate.js";
import { writeNew } from "../output/write.js";
import { mustHold } from "../set/set-inputs.js";
import { modelOf } from "../template/models.js";
import { pathFrom } from "./beside.js";
import type { Context } from "./context.js";

/** `rillbook shorten`: a job whose trail is longer than a workbook carries, with what its values come from alone. */
export function shortenCommand(context: Context): Command {
  return new Command("shorten")
    .description("make a job record whose trail has the last entry of each input alone")
    .argument("<job>", "job record (JSON); it is only read: keep it, it has the whole trail")
    .option("-o, --output <job>", "the new record")
    .option("--json", "what was left out, as JSON")
    .addHelpText(
      "after",
      "\nExample:\n  rillbook shorten hillside.json -o hillside-short.json\n\nThe new record gives the same bid. A note in its trail says with which entry the whole one ends.",
    )
    .action(async (file: string, { output, json }: { output?: string; json?: true }) => {
      if (output === undefined) {
        throw new RillbookError("output-missing", "Name the new record, as in -o short.json.");
      }
      const raw = await readJob(file, context.templates);
      const job = validateJob(modelOf(raw.template, raw.units), raw.record, file);
      const whole = job.trail ?? [];
      mustHold(whole, file);
      const trail = shortened(whole, file);
      if (trail.length === whole.length) {
        const entries = whole.length;
        if (json) context.json({ written: null, entries, of: entries }, 2);
        else context.out(nothingLeftOut(file, entries));
        return;
      }
      const office =
        job.office === undefined
          ? {}
          : { office: pathFrom(output, resolve(dirname(file), job.office)) };
      const plan = { kind: "record", inputs: [file] } as const;
      await writeNew(output, plan, recordText({ ...job, ...office, trail }));
      if (json) context.json({ written: output, entries: trail.length, of: whole.length }, 2);
      else context.out(`Written: ${output}, with ${trail.length} of ${whole.length} entries\n`);
    });
}

/** Each input has one entry already, or the trail has none. */
const nothingLeftOut = (file: string, entries: number): string =>
  `${file} has nothing to shorten: its trail has ${entries === 0 ? "no entry" : `${entries === 1 ? "1 entry" : `${entries} entries`}, one for each input`}. Nothing was written; ${file} can be used as it is.\n`;
