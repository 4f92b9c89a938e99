import { extname } from "node:path";
import { Command } from "commander";
import { compareJobs } from "../audit/compare/compare.js";
import { comparisonJson } from "../audit/compare/json.js";
import { changeOrderMarkdown, comparisonMarkdown } from "../audit/compare/text.js";
import { comparisonWorkbook } from "../audit/compare/workbook.js";
import { openJob } from "../audit/open.js";
import { RillbookError } from "../errors.js";
import { outputTo } from "../output/write.js";
import type { Context } from "./context.js";

interface Options {
  output?: string;
  customer?: true;
  prices?: string;
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
    .option("--prices <file>", "price book for job records, instead of those they name")
    .option("--json", "the whole comparison as JSON")
    .addHelpText(
      "after",
      "\nExample:\n  rillbook compare agreed.json wider.json --customer -o change-order.xlsx",
    )
    .action(async (first: string, second: string, options: Options) => {
      const { output, prices } = options;
      const kind = output === undefined ? "" : extname(output).toLowerCase();
      if (output !== undefined && kind !== ".xlsx" && kind !== ".md") {
        throw new RillbookError(
          "output-kind",
          `${output} cannot be written: its name must end in .xlsx or .md. Name it so.`,
        );
      }
      const [a, b] = [
        await openJob(first, context.templates, prices),
        await openJob(second, context.templates, prices),
      ];
      const place =
        output === undefined
          ? undefined
          : await outputTo(output, {
              kind: kind === ".md" ? "comparison text" : "comparison",
              inputs: [...a.files, ...b.files],
              templates: context.templates,
            });
      const comparison = compareJobs(a, b);
      const text = options.customer
        ? `${changeOrderMarkdown(comparison)}\n`
        : comparisonMarkdown(comparison);
      if (place !== undefined) {
        const audience = options.customer ? "customer" : "office";
        await place.write(kind === ".md" ? text : await comparisonWorkbook(comparison, audience));
      }
      if (options.json) context.out(`${JSON.stringify(comparisonJson(comparison), null, 2)}\n`);
      else context.out(output === undefined ? text : `Written: ${output}\n`);
    });
}
