import { Command } from "commander";
import { type LoadedJob, loadJob } from "../book/load-job.js";
import { calculate } from "../evaluate/calculate.js";
import { rootErrors } from "../job/errors-in-cells.js";
import { failedChecks } from "../job/failed-checks.js";
import { shownValue } from "../job/shown-value.js";
import { mustFitWorkbook } from "../job/trail/longest.js";
import { outputTo } from "../output/write.js";
import { editsAgainst } from "../take/untaken.js";
import { withPicturesOver } from "../workbook/pictures/carry.js";
import type { Identity } from "../workbook/write/identity.js";
import { writeWorkbook } from "../workbook/write/write.js";
import type { Context } from "./context.js";
import { errorsAsJson, errorsTold } from "./errors-told.js";
import { failedLines } from "./failed-lines.js";

/** `rillbook bid`: a job record becomes a workbook. */
export function bidCommand(context: Context): Command {
  return new Command("bid")
    .description("write the bid of a job as a workbook of live formulas")
    .argument("<job>", "job record (JSON)")
    .requiredOption("-o, --output <xlsx>", "workbook to write")
    .option("--office <file>", "office book, instead of the one the job names")
    .option("--json", "tell the result as JSON")
    .addHelpText("after", "\nExample:\n  rillbook bid garden-corner.json -o garden-corner.xlsx")
    .action(async (file: string, options: { output: string; office?: string; json?: true }) => {
      const loaded = await loadJob(file, context.templates, options.office);
      const { model, given, job } = loaded;
      mustFitWorkbook(job.trail ?? [], file);
      const output = await outputTo(options.output, {
        kind: "bid",
        inputs: loaded.files,
        edits: editsAgainst(context.templates, { model, values: given, trail: job.trail ?? [] }),
      });
      const values = calculate(model, given);
      const bid = await writeWorkbook(model, values, identityOf(loaded));
      await output.write(await withPicturesOver(options.output, bid));
      const failed = failedChecks(model, values);
      const must = failed.filter(({ level }) => level === "must");
      const errors = rootErrors(model, values);
      const stands = must.length === 0 && errors.length === 0;
      context.status = stands ? 0 : 1;
      if (options.json) {
        const headline = Object.fromEntries(
          model.template.headline.map((name) => [name, jsonValue(loaded, values, name)]),
        );
        const checks = failed.map(({ cell, level, message }) => ({
          name: cell.id,
          level,
          message,
        }));
        context.json(
          {
            written: options.output,
            stands,
            headline,
            failed: checks,
            errors: errorsAsJson(errors),
          },
          2,
        );
        return;
      }
      for (const name of model.template.headline) {
        const cell = model.byId.get(name);
        if (cell === undefined) continue;
        context.out(`${cell.declaration.label}: ${shownValue(model, cell, values)}\n`);
      }
      context.out(`Written: ${options.output}\n`);
      for (const line of [...errorsTold(errors), ...failedLines(failed)]) context.err(`${line}\n`);
    });
}

function jsonValue({ model }: LoadedJob, values: readonly unknown[], name: string): unknown {
  const cell = model.byId.get(name);
  return cell === undefined ? null : { value: values[cell.index], unit: cell.unit.name };
}

/** What the workbook of a job says of itself. */
export function identityOf({ model, job, book }: LoadedJob): Identity {
  return {
    job: job.job,
    template: model.template.name,
    version: model.template.version,
    units: model.system,
    ...(job.about === undefined ? {} : { about: job.about }),
    book: book.name,
    bookAsOf: book.asOf,
    bookMark: book.mark,
    ...(job.office === undefined ? {} : { office: job.office }),
    ...(job.trail === undefined ? {} : { trail: job.trail }),
  };
}
