import { extname } from "node:path";
import { Command } from "commander";
import { openJob } from "../audit/open.js";
import { changeOrderOf, type Terms } from "../compare/change-order.js";
import { compareJobs } from "../compare/compare.js";
import { comparisonJson } from "../compare/json.js";
import { changeOrderMarkdown, comparisonMarkdown, heldBackSaid } from "../compare/text.js";
import { comparisonWorkbook } from "../compare/workbook.js";
import { RillbookError } from "../errors.js";
import { calculate } from "../evaluate/calculate.js";
import { serialOf, today } from "../job/date.js";
import { type FailedCheck, failedChecks } from "../job/failed-checks.js";
import { oneLine } from "../job/trail/entry.js";
import { outputTo } from "../output/write.js";
import { shownText } from "../text/shown.js";
import type { Context } from "./context.js";
import { logoOfJob } from "./logo-of-job.js";

interface Options {
  output?: string;
  customer?: true;
  office?: string;
  number?: string;
  date?: string;
  reason?: string;
  officeChanges?: true;
  json?: true;
}

/** `rillbook compare`: two jobs side by side, and the change order between them. */
export function compareCommand(context: Context): Command {
  return new Command("compare")
    .description("tell what changed between two jobs, and write the change order for the customer")
    .argument("<first>", "job record or workbook, as agreed")
    .argument("<second>", "job record or workbook, with the changes")
    .option("-o, --output <file>", "write it to a file: .xlsx or .md")
    .option("--customer", "the change order alone, without the office's figures")
    .option("--number <no>", "number of the change order (blank: to be filled in by hand)")
    .option("--date <day>", "its date, like 2027-05-31 (default: today)")
    .option("--reason <text>", "why, as the customer reads it (blank: to be filled in by hand)")
    .option(
      "--office-changes",
      "put the office's own changes (margin, crew, prices) into its sum too",
    )
    .option("--office <file>", "office book for job records, instead of those they name")
    .option("--json", "the whole comparison as JSON")
    .addHelpText(
      "after",
      "\nThe change order lists every line of the agreed page that changes. Changes that are the office's own (margin,\ncrew, prices of the book) are held back from it and told here, with exit status 1.\n\nExample:\n  rillbook compare agreed.json wider.json --customer -o change-order.xlsx",
    )
    .action((first: string, second: string, options: Options) =>
      compareFiles(context, first, second, options),
    );
}

async function compareFiles(
  context: Context,
  first: string,
  second: string,
  options: Options,
): Promise<void> {
  const { output, office } = options;
  const kind = kindOf(output);
  const [a, b] = [
    await openJob(first, context.templates, office, calculate),
    await openJob(second, context.templates, office, calculate),
  ];
  const inputs = [...a.files, ...b.files];
  const place = output === undefined ? undefined : await outputTo(output, { kind, inputs });
  const comparison = compareJobs(a, b);
  const order = changeOrderOf(comparison, termsOf(options));
  const text = options.customer
    ? `${changeOrderMarkdown(order)}\n`
    : comparisonMarkdown(comparison, order);
  if (place !== undefined) {
    const audience = options.customer ? "customer" : "office";
    await place.write(
      kind === "comparison text"
        ? shownText(text)
        : await comparisonWorkbook(comparison, audience, order, await logoOfJob(b)),
    );
  }
  if (options.json) context.json(comparisonJson(comparison, order), 2);
  else context.out(output === undefined ? text : `Written: ${output}\n`);
  // without --customer the office reads the rest in the comparison
  if (options.customer) warnOfOrder(context, second, b, order);
}

/** Markdown or workbook, by the file's name; throws RillbookError for another one. */
function kindOf(output: string | undefined): "comparison" | "comparison text" {
  const ending = output === undefined ? ".xlsx" : extname(output).toLowerCase();
  if (ending === ".md") return "comparison text";
  if (ending === ".xlsx") return "comparison";
  throw new RillbookError(
    "output-kind",
    `${output} cannot be written: its name must end in .xlsx or .md. Name it so.`,
  );
}

/** What the customer's page does not say: that it is a draft, and what is held back from it. */
function warnOfOrder(
  context: Context,
  name: string,
  { model, values }: Awaited<ReturnType<typeof openJob>>,
  order: ReturnType<typeof changeOrderOf>,
): void {
  const failing = failedChecks(model, values).filter(({ level }) => level === "must");
  if (failing.length > 0) {
    context.status = 1;
    context.err(draftSaid(name, failing));
  }
  if (order.heldBack === undefined) return;
  context.status = 1;
  context.err(`${heldBackSaid(order)}\n`);
}

/** A change order of a job that does not stand is not one to be sent. */
function draftSaid(job: string, failing: readonly FailedCheck[]): string {
  const many = failing.length === 1 ? "1 check fails" : `${failing.length} checks fail`;
  const first = failing[0] as FailedCheck;
  return `Not to be handed out yet: of ${job}, ${many}, first ${first.sheet}, ${first.cell.declaration.label}: ${first.message} All: rillbook bid.\n`;
}

function termsOf({ number, date = today(), reason, officeChanges }: Options): Terms {
  if (serialOf(date) === undefined) {
    throw new RillbookError(
      "date-invalid",
      `--date is ${JSON.stringify(date)}, but must be a date like 2027-05-31.`,
    );
  }
  return {
    date,
    ...(number === undefined ? {} : { number: oneLine(number) }),
    ...(reason === undefined ? {} : { reason: oneLine(reason) }),
    ...(officeChanges === undefined ? {} : { withOffice: true }),
  };
}
