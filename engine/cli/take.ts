import { Command } from "commander";
import type { Finding } from "../audit/finding.js";
import { RillbookError } from "../errors.js";
import { rawJob } from "../job/read.js";
import { recordText } from "../job/save.js";
import { validateJob } from "../job/validate.js";
import { changeFile } from "../output/change.js";
import { mustEndRight } from "../output/judge.js";
import { type Into, takeWorkbook } from "../take/take.js";
import { modelOf } from "../template/models.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import type { Context } from "./context.js";
import { entryLine, takerOf } from "./trail-options.js";

interface Options {
  readonly by?: string;
  readonly note?: string;
  readonly output?: string;
  readonly json?: true;
}

/** `rillbook take`: the inputs of an edited workbook become a job record again. */
export function takeCommand(context: Context): Command {
  return new Command("take")
    .description("take the inputs of an edited workbook back into a job record, with its trail")
    .argument("<workbook>", "workbook that rillbook wrote and somebody edited (.xlsx)")
    .option(
      "--by <who>",
      "who takes it in (default: as the workbook says, who walked and who chose)",
    )
    .option(
      "-o, --output <job>",
      "job record: an existing one takes the changes in; else a new one is made (default: the workbook's name with .json)",
    )
    .option("--note <text>", "why, for each entry of the trail")
    .option("--json", "the new entries and what was found, as JSON")
    .addHelpText(
      "after",
      '\nExample:\n  rillbook take hillside.xlsx -o hillside.json --by "A. Estimator" --note "changes of the meeting"\n\nExit status 1: taken in, but the workbook was changed in more than its inputs; that is listed and not taken in.',
    )
    .action(async (file: string, options: Options) => {
      const who = takerOf(options);
      const content = await readWorkbookFile(file);
      const target = options.output ?? `${file.replace(/\.xls[xm]$/i, "")}.json`;
      const change = (old: string | undefined) => {
        const into = recordAt(target, old, options.output !== undefined, context);
        const taker = { ...who, time: new Date().toISOString() };
        const taken = takeWorkbook(content, context.templates, file, taker, into);
        return { content: recordText(taken.job), result: taken };
      };
      const { entries, findings } = await changeFile(target, change, [file]);
      context.status = findings.length > 0 ? 1 : 0;
      if (options.json) {
        context.json({ written: target, entries, findings }, 2);
        return;
      }
      for (const entry of entries) context.out(entryLine(entry));
      const count = entries.length === 1 ? "1 change" : `${entries.length} changes`;
      context.out(
        `Written: ${target} (${entries.length === 0 ? "no input was changed" : count})\n`,
      );
      for (const finding of findings) context.err(`not taken in: ${told(finding)}\n`);
    });
}

function recordAt(
  target: string,
  old: string | undefined,
  asked: boolean,
  { templates }: Context,
): Into | undefined {
  if (old === undefined) {
    mustEndRight(target, "record");
    return undefined;
  }
  if (!asked) {
    throw new RillbookError(
      "file-exists",
      `${target} exists already and is left as it is. To bring the changes into it, give -o ${target}; or name another file.`,
    );
  }
  const raw = rawJob(old, templates, target);
  return {
    record: validateJob(modelOf(raw.template, raw.units), raw.record, target),
    file: target,
  };
}

function told({ where, name, found, expected, advice }: Finding): string {
  const what = name === undefined || where.includes(name) ? where : `${name} (${where})`;
  return `${what}: ${found}; expected ${expected}. ${advice}`;
}
