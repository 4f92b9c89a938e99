import { Command, InvalidArgumentError } from "commander";
import { type OpenedJob, openJob } from "../audit/open.js";
import { agree, said } from "../audit/subject.js";
import type { TraceNode } from "../trace/node.js";
import { traceText } from "../trace/text.js";
import { traceNamed } from "../trace/trace-named.js";
import { askedFor } from "./cell-asked-for.js";
import type { Context } from "./context.js";
import { bothOption, evaluatorFor } from "./evaluators.js";
import { exampleOf } from "./example.js";

/** `rillbook trace`: a figure with its math, down to where its inputs come from. */
export function traceCommand(context: Context): Command {
  const { result } = exampleOf(context);
  return new Command("trace")
    .description(
      "show where a figure comes from: its formula in names and in numbers, and its parts",
    )
    .argument("<file>", "job record or workbook")
    .argument(
      "<name>",
      `a cell (price, or its place, Sheet!B12), a cell in a row (${result}[2]) or a column (${result})`,
    )
    .option("--depth <levels>", "levels of formulas to open", wholeNumber, 2)
    .option("--office <file>", "office book, instead of the one the job names")
    .option(...bothOption)
    .option("--json", "everything, as JSON")
    .addHelpText(
      "after",
      "\nNumbers stand with their units in brackets, rounded as the workbook shows them, or to as many digits as\nthe formula needs to give the result shown; --json has them in full.\n\nExample:\n  rillbook trace garden-corner.json price --depth 3",
    )
    .action(
      async (
        file: string,
        name: string,
        options: { depth: number; office?: string; json?: true; both?: true },
      ) => {
        const evaluate = await evaluatorFor(options);
        const job = await openJob(file, context.templates, options.office, evaluate);
        const node = nodeFor(job, askedFor(job, name, false), options.depth);
        if (options.json) {
          context.json(node, 2);
          return;
        }
        context.out(traceText(node, process.stdout.columns ?? 100));
        const differs = shownOtherwise(job, node.name);
        if (differs !== undefined) context.err(differs);
      },
    );
}

function nodeFor(job: OpenedJob, name: string, depth: number): TraceNode {
  const node = traceNamed(job, name, depth);
  if (node !== undefined) return node;
  throw new Error(`"${name}" is neither a cell nor a column.`);
}

/** The figures of a trace are calculated; a workbook may show something else. */
function shownOtherwise({ model, values, shown }: OpenedJob, id: string): string | undefined {
  const index = model.byId.get(id)?.index;
  if (index === undefined || shown === undefined) return undefined;
  const [here, follows] = [shown[index] ?? null, values[index] ?? null];
  if (agree(here, follows)) return undefined;
  return `The workbook shows ${said(here)} for ${id}; its inputs give ${said(follows)}. See rillbook audit.\n`;
}

function wholeNumber(text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 0 || value > 50) {
    throw new InvalidArgumentError("Give a whole number from 0 to 50.");
  }
  return value;
}
