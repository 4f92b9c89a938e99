import { Command } from "commander";
import { type Audit, auditWorkbook } from "../audit/audit.js";
import { modelFor } from "../audit/identity.js";
import { auditMarkdown, auditText } from "../audit/report.js";
import type { OfficeBook } from "../book/office-book.js";
import { readOfficeBook } from "../book/read.js";
import { readText } from "../files.js";
import { plainValue } from "../job/plain-value.js";
import { outputTo } from "../output/write.js";
import { fingerprintOf, openKey } from "../seal/index.js";
import { layoutOf } from "../template/office-layout.js";
import { shownText } from "../text/shown.js";
import { toldIdentity } from "../workbook/match/told-identity.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import type { Context } from "./context.js";
import { wrongFile } from "./given-files.js";

interface Options {
  readonly office?: string;
  readonly key?: string;
  readonly report?: string;
  readonly json?: true;
}

/** `rillbook audit`: is a workbook still what its template and its trail say? */
export function auditCommand(context: Context): Command {
  return new Command("audit")
    .description(
      "tell what was changed, overwritten or has gone stale in a workbook, and what its inputs stand on",
    )
    .argument("<workbook>", "a workbook written by rillbook, edited by anyone")
    .option("--office <file>", "office book, to hold each price against it")
    .option(
      "--key <key>",
      "the office's open key, to hold the seal against it: a PEM file, or its fingerprint",
    )
    .option("--report <md>", "write the findings as a Markdown document")
    .option("--json", "tell the findings as JSON")
    .addHelpText(
      "after",
      "\nExit status: 0 nothing but what is to know; 1 findings; 2 the workbook cannot be read.\n\nExample:\n  rillbook audit garden-corner.xlsx --report audit.md",
    )
    .action(async (file: string, options: Options) => {
      const key = options.key === undefined ? undefined : await fingerprintAt(options.key, context);
      const content = await readWorkbookFile(file, { look: true });
      await mustBeBid(file, content, context);
      const report =
        options.report === undefined
          ? undefined
          : await outputTo(options.report, {
              kind: "report",
              inputs: [file, options.office, options.key].filter((one) => one !== undefined),
            });
      const book = await officeBook(options.office, content, context);
      const audit = await auditWorkbook(content, context.templates, { book, key, file });
      context.status = audit.clean ? 0 : 1;
      await report?.write(shownText(auditMarkdown(audit, file)));
      if (options.json) context.json(asJson(audit, file), 2);
      else {
        context.verdict(audit.clean ? "CLEAN" : "NOT CLEAN", audit.clean);
        context.out(auditText(audit));
      }
    });
}

/** A workbook that names no template is audited as what lost its name, unless it is known to be something else. */
async function mustBeBid(file: string, content: WorkbookContent, { templates }: Context) {
  if (toldIdentity(content).identity.template !== undefined) return;
  const given = { place: "rillbook audit", file, wanted: "workbook" } as const;
  const wrong = await wrongFile(given, templates);
  if (wrong !== undefined) throw wrong;
}

/** A fingerprint as it is, or that of the key in a file. Throws RillbookError. */
async function fingerprintAt(given: string, { err }: Context): Promise<string> {
  const bare = given.replace(/[\s:]/g, "").toLowerCase();
  if (/^[0-9a-f]{64}$/.test(bare)) return bare;
  const pem = await readText(given, "key");
  const fingerprint = fingerprintOf(openKey(pem, given));
  if (/BEGIN PRIVATE KEY/.test(pem)) err(secretWarning(given, fingerprint));
  return fingerprint;
}

/** Whoever holds the secret key can seal in the office's name; to audit, the open one is enough. */
const secretWarning = (file: string, fingerprint: string): string =>
  `warning: ${file} is the secret key, which signs and stays in the office. To audit, the open key is enough, and nobody else should have more: ${file.replace(/(\.pem)?$/i, ".open.pem")}, or its fingerprint ${fingerprint}.\n`;

/** An office book is read by the layout of the template; without a template there is nothing to hold. */
async function officeBook(
  path: string | undefined,
  content: WorkbookContent,
  { templates }: Context,
): Promise<OfficeBook | undefined> {
  const model = modelFor(toldIdentity(content).identity, templates);
  if (path === undefined || !("cells" in model)) return undefined;
  return readOfficeBook(path, layoutOf(model.template));
}

function asJson({ identity, findings, clean, headline, seal }: Audit, workbook: string): object {
  const figures = headline.map(({ cell, shown, byTemplate, before }) => ({
    name: cell.id,
    shown: plainValue(shown),
    byTemplate: plainValue(byTemplate),
    ...(before === undefined ? {} : { withInputsAsBefore: plainValue(before) }),
    unit: cell.unit.name,
  }));
  return { workbook, clean, identity, seal, headline: figures, findings };
}
