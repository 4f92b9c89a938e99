import { stat } from "node:fs/promises";
import { basename, dirname, join, relative, resolve } from "node:path";
import { Command, Option } from "commander";
import { newestTemplate } from "../job/read.js";
import { recordText } from "../job/save.js";
import { newJob } from "../job/start.js";
import { validateJob } from "../job/validate.js";
import { mustBeNew, writeNew } from "../output/write.js";
import { modelOf } from "../template/models.js";
import { type UnitSystem, unitSystems } from "../units/quantity.js";
import type { Context } from "./context.js";

interface Options {
  readonly job?: string;
  readonly template?: string;
  readonly units: UnitSystem;
  readonly office?: string;
}

/** `rillbook start`: a new job record with every input, its unit, default and meaning. */
export function startCommand(context: Context): Command {
  return new Command("start")
    .description(
      "write a new job record, with every input, its unit, its default and what it means",
    )
    .argument("<file>", "job record to write (JSON)")
    .option("--job <number>", "the job's number or name (default: the file's name)")
    .option("--template <name>", `template (default: ${context.templates[0]?.name ?? "none"})`)
    .option("--office <file>", "office book of the job (default: office-book.xlsx beside it)")
    .addOption(new Option("--units <system>", "units").choices(unitSystems).default("us"))
    .addHelpText("after", "\nExample:\n  rillbook start hillside.json --job 2027-014")
    .action(async (file: string, options: Options) => {
      await mustBeNew(file);
      const template = newestTemplate(options.template, context.templates, "--template");
      const job = options.job ?? basename(file).replace(/\.json$/, "");
      const folder = dirname(resolve(file));
      const book = resolve(options.office ?? join(folder, "office-book.xlsx"));
      const named = relative(folder, book).replaceAll("\\", "/");
      const model = modelOf(template, options.units);
      const record = validateJob(model, newJob(model, job, named), file);
      const plan = { kind: "record", inputs: [book] } as const;
      await writeNew(file, plan, recordText(record));
      const there = await stat(book).catch(() => undefined);
      const newBook = book.replace(/\.[^./\\]*$/, "");
      const hint =
        there === undefined
          ? `The office book ${book} does not exist yet. Write one: rillbook office --new ${newBook}.xlsx\n`
          : "";
      context.out(
        `Written: ${file}\n${hint}Fill in "inputs" (null must be given, unless the guide says optional), then: rillbook bid ${file} -o bid.xlsx\n`,
      );
    });
}
