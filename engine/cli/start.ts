import { stat } from "node:fs/promises";
import { basename } from "node:path";
import { Command, Option } from "commander";
import { RillbookError } from "../errors.js";
import { writeWhole } from "../files.js";
import { templateFor } from "../job/read.js";
import { newJob } from "../job/start.js";
import { modelOf } from "../template/models.js";
import { type UnitSystem, unitSystems } from "../units/quantity.js";
import type { Context } from "./context.js";

/** `rillbook start`: a new job record with every input, its unit, default and meaning. */
export function startCommand(context: Context): Command {
  return new Command("start")
    .description(
      "write a new job record, with every input, its unit, its default and what it means",
    )
    .argument("<file>", "job record to write (JSON)")
    .option("--job <number>", "the job's number or name (default: the file's name)")
    .option("--template <name>", "template", "waterfall")
    .addOption(new Option("--units <system>", "units").choices(unitSystems).default("us"))
    .addHelpText("after", "\nExample:\n  rillbook start hillside.json --job 2027-014")
    .action(
      async (file: string, options: { job?: string; template: string; units: UnitSystem }) => {
        const found = await stat(file).catch(() => undefined);
        if (found !== undefined) {
          throw new RillbookError(
            "file-exists",
            `${file} exists already and is left as it is. Name another file.`,
          );
        }
        const newest = Math.max(
          ...context.templates
            .filter(({ name }) => name === options.template)
            .map((one) => one.version),
        );
        const template = templateFor(options.template, newest, context.templates, "--template");
        const job = options.job ?? basename(file).replace(/\.json$/, "");
        const record = newJob(modelOf(template, options.units), job);
        await writeWhole(file, `${JSON.stringify(record, null, 2)}\n`);
        context.out(
          `Written: ${file}\nFill in "inputs" (null must be given, unless the guide says optional), then: rillbook bid ${file} -o bid.xlsx\n`,
        );
      },
    );
}
