import { Command } from "commander";
import { officeBeside } from "../book/load-job.js";
import { mustBeThere, rawJob } from "../job/read.js";
import { recordText } from "../job/save.js";
import type { OriginName } from "../job/trail/entry.js";
import { validateJob } from "../job/validate.js";
import { changeFile } from "../output/change.js";
import { readAssignment } from "../set/assignment.js";
import { setInputs } from "../set/set-inputs.js";
import { modelOf } from "../template/models.js";
import type { Example } from "../template/template.js";
import type { Context } from "./context.js";
import { exampleOf } from "./example.js";
import { entryLine, fromOption, mustHaveOptions, whoAndWhy } from "./trail-options.js";

interface Options {
  readonly by?: string;
  readonly from?: OriginName;
  readonly note?: string;
  readonly json?: true;
}

const help = ({ input, typed }: Example) => `
A number may carry its unit, which is converted to the input's own: 42 in, 2'6", 2-1/2 in, 1.2 m.
Without one it is in the input's own unit. Percentages carry their sign: 7.65%.

Example:
  rillbook set hillside.json "${input}[2]=${typed}" --by "Site crew" --from "measured on site"`;

/** `rillbook set`: inputs of a job record, with who, where from and why in its trail. */
export function setCommand(context: Context): Command {
  const example = exampleOf(context);
  const { input, typed, table } = example;
  return new Command("set")
    .description("set inputs of a job, each with an entry in its trail")
    .argument("<job>", "job record (JSON)")
    .argument(
      "<name=value...>",
      `inputs: name=value, ${input}[2]=${typed} (the row after the last adds one), name= (default or blank), ${table}[3]= (row out)`,
    )
    .option("--by <who>", "who says so (always needed)")
    .addOption(fromOption())
    .option("--note <text>", "why, or where to find it")
    .option("--json", "the new entries of the trail as JSON")
    .addHelpText("after", help(example))
    .action(async (file: string, written: string[], options: Options) => {
      const { by, from } = options;
      mustHaveOptions({ by, from });
      const who = whoAndWhy(options);
      const office = await officeBeside(file, context.templates);
      const entries = await changeFile(file, (old) => {
        const raw = rawJob(mustBeThere(old, file), context.templates, file);
        const model = modelOf(raw.template, raw.units);
        const job = validateJob(model, raw.record, file);
        const assignments = written.map((one) => readAssignment(model, one));
        const circumstances = { ...who, from: from as OriginName, time: new Date().toISOString() };
        const set = setInputs(model, job, assignments, circumstances, file, office);
        return { content: recordText(set.job), result: set.entries };
      });
      if (options.json) context.json(entries, 2);
      else for (const entry of entries) context.out(entryLine(entry));
    });
}
