import { Command } from "commander";
import { auditWorkbook } from "../audit/audit.js";
import { stands } from "../audit/index.js";
import { RillbookError } from "../errors.js";
import { type Paper, printPapers } from "../print/index.js";
import type { Template } from "../template/template.js";
import { toldIdentity } from "../workbook/match/told-identity.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import type { Context } from "./context.js";
import { doneToIt, notAsWritten } from "./not-as-written.js";

interface Options {
  readonly pages?: string;
  readonly output?: string;
  readonly json?: true;
}

/** `rillbook print`: the pages of a bid that leave the office, as PDF files. */
export function printCommand(context: Context): Command {
  return new Command("print")
    .description(
      "print the pages of a bid that leave the office, as PDF files, through LibreOffice",
    )
    .argument("<bid>", "bid workbook (.xlsx); it is only read")
    .option("--pages <names>", "which, with commas between (default: all)")
    .option("-o, --output <folder>", "where the files go (default: beside the bid)")
    .option("--json", "tell the result as JSON")
    .addHelpText(
      "after",
      `\nExample:\n  rillbook print yard.xlsx --pages ${examplePages(context)} -o papers\n\nWhat prints is calculated anew. A bid that does not stand prints with DRAFT on it (status 1).\nThe audit looks at the workbook first: where something in it is wrong, such as a figure typed over a formula, print says so and prints all the same (status 1).`,
    )
    .action(async (file: string, { pages, output, json }: Options) => {
      const content = await readWorkbookFile(file, { look: true });
      // a library may have dropped the properties: the first sheet says it too
      const { template: name, version } = toldIdentity(content).identity;
      const template = context.templates.find(
        (one) => one.name === name && one.version === Number(version),
      );
      if (template === undefined) {
        throw new RillbookError(
          "not-a-bid",
          `${file} does not say that it is a bid of a template known here, so its pages are not known. Give a workbook that rillbook bid wrote.`,
        );
      }
      const papers = chosen(
        papersOf(template),
        pages,
        file,
        new Set(content.sheets.map((one) => one.name)),
      );
      const { findings } = await auditWorkbook(content, context.templates, { file });
      const [wrong, doubtful] = [doneToIt(findings, "wrong"), doneToIt(findings, "doubtful")];
      const written = await printPapers(file, papers, output);
      const isFinal = stands(content, context.templates);
      context.status = isFinal && wrong.length === 0 ? 0 : 1;
      context.err(notAsWritten(file, wrong, "wrong"));
      context.err(notAsWritten(file, doubtful, "doubtful"));
      if (!isFinal)
        context.err(
          `DRAFT: this bid does not stand, and its pages say so. See its sheet Checks.\n`,
        );
      if (json) context.json({ written, stands: isFinal, findings: [...wrong, ...doubtful] }, 2);
      else for (const one of written) context.out(`Written: ${one}\n`);
    });
}

const examplePages = ({ templates: [first] }: Context): string =>
  (first === undefined ? [] : papersOf(first).slice(0, 2)).map(({ page }) => page).join(",");

/** The pages handed out, as they are asked for: in small letters, words joined by hyphens. */
const papersOf = ({ sheets }: Template): Paper[] =>
  sheets.flatMap(({ name, handout }) =>
    handout ? [{ page: name.toLowerCase().replaceAll(" ", "-"), sheet: name }] : [],
  );

function chosen(
  all: readonly Paper[],
  pages: string | undefined,
  file: string,
  sheets: ReadonlySet<string>,
): readonly Paper[] {
  if (all.length === 0) {
    throw new RillbookError(
      "page-missing",
      `${file} has no page that leaves the office: its template hands none out. Open it in a spreadsheet and print its sheets from there.`,
    );
  }
  const asked = pages?.split(",").map((one) => one.trim().toLowerCase());
  const names = all.map(({ page }) => page);
  for (const one of asked ?? []) {
    if (names.includes(one)) continue;
    throw new RillbookError(
      "page-unknown",
      `--pages names "${one}", which is no page that leaves the office. Choose of: ${names.join(", ")}.`,
    );
  }
  const wanted = all.filter(({ page }) => asked?.includes(page) ?? true);
  const missing = wanted.find(({ sheet }) => !sheets.has(sheet));
  if (missing !== undefined) {
    throw new RillbookError(
      "page-missing",
      `${file} has no sheet ${missing.sheet}. Undo its renaming or write the bid again, or leave ${missing.page} out with --pages.`,
    );
  }
  return wanted;
}
