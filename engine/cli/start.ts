import { stat } from "node:fs/promises";
import { basename, extname, relative } from "node:path";
import { Command, Option } from "commander";
import type { OfficeBook } from "../book/office-book.js";
import { readOfficeBook } from "../book/read.js";
import { starterBook } from "../book/starter.js";
import { valuesOf } from "../book/values.js";
import { RillbookError } from "../errors.js";
import { missingInputs } from "../job/missing.js";
import { newestTemplate } from "../job/read.js";
import type { JobRecord } from "../job/record.js";
import { recordText } from "../job/save.js";
import { newJob } from "../job/start.js";
import { validateJob } from "../job/validate.js";
import { mustBeNew, writeNew } from "../output/write.js";
import type { Model } from "../template/model.js";
import { modelOf } from "../template/models.js";
import { layoutOf } from "../template/office-layout.js";
import type { Template } from "../template/template.js";
import { type UnitSystem, unitSystems } from "../units/quantity.js";
import { pathFrom } from "./beside.js";
import type { Context } from "./context.js";
import { missingLines } from "./missing-lines.js";
import { templateNames, whichTemplate } from "./which-template.js";

interface Options {
  readonly job?: string;
  readonly template?: string;
  readonly units: UnitSystem;
  readonly office?: string;
}

/** `rillbook start`: a new job, as a workbook to be filled in or as a record. */
export function startCommand(context: Context): Command {
  return new Command("start")
    .description(
      "write a new job: a live workbook (.xlsx) that turns into a bid as it is filled in, or a record (.json) of what a job must give",
    )
    .argument("<file>", "workbook (.xlsx) or job record (.json) to write")
    .option("--job <number>", "the job's number or name (default: the file's name)")
    .option("--template <name>", `what is to be built (${templateNames(context)})`)
    .option("--office <file>", "office book of the job (default: the starter book of the program)")
    .addOption(new Option("--units <system>", "units").choices(unitSystems).default("us"))
    .addHelpText("after", "\nExample:\n  rillbook start hillside.xlsx --job 2027-014")
    .action(async (file: string, options: Options) => {
      await mustBeNew(file);
      const asked = options.template ?? (await whichTemplate(context));
      const template = newestTemplate(asked, context.templates, "--template");
      const kind = extname(file).toLowerCase() === ".xlsx" ? "bid" : "record";
      const job = options.job ?? basename(file).replace(/\.(json|xlsx)$/i, "");
      const book = await officeBook(options.office, template, options.units);
      const model = modelOf(template, options.units);
      const record = validateJob(
        model,
        newJob(model, job, options.office && pathFrom(file, options.office)),
        file,
      );
      const inputs = options.office === undefined ? [] : [options.office];
      const { content, lacking } = await madeFor(
        model,
        record,
        book,
        kind,
        options.office,
        context,
      );
      await writeNew(file, await planFor(kind, inputs, context), content);
      const own = ownTemplates(context);
      // a template without an office book has no placeholders either
      const placeholders =
        options.office === undefined && layoutOf(template)(options.units).length > 0;
      context.out(
        `Written: ${file}\n${lacking}${placeholders ? starterHint(own) : ""}Then: rillbook bid ${file}${kind === "bid" ? "" : " -o bid.xlsx"}${own}\n`,
      );
    });
}

/** The files of templates that the next command needs as well. */
const ownTemplates = ({ templateFiles = [] }: Context): string =>
  templateFiles.map((file) => ` --template ${relative(".", file)}`).join("");

const starterHint = (own: string): string =>
  `Prices are placeholders of the starter book. Write your own once: rillbook office --new office.xlsx${own}\n`;

async function officeBook(
  path: string | undefined,
  template: Template,
  units: UnitSystem,
): Promise<OfficeBook> {
  if (path === undefined) return starterBook(template, units);
  if ((await stat(path).catch(() => undefined)) === undefined) {
    throw new RillbookError(
      "office-missing",
      `The office book ${path} does not exist. Write one with "rillbook office --new ${basename(path)}", or leave --office out to begin with the starter book.`,
    );
  }
  return readOfficeBook(path, layoutOf(template));
}

async function madeFor(
  model: Model,
  job: JobRecord,
  book: OfficeBook,
  kind: "bid" | "record",
  office: string | undefined,
  context: Context,
): Promise<{ content: Uint8Array | string; lacking: string }> {
  const given = valuesOf(model, job, book, "left blank");
  const lacking = missingLines(missingInputs(model, given));
  if (kind === "record") return { content: recordText(job), lacking };
  // a record needs nothing of what writes workbooks
  const { workbookOf } = await import("./started-workbook.js");
  return { content: await workbookOf(context, { model, job, book, given }, office), lacking };
}

/** What is looked at where the new file goes: only a workbook can hold what a person changed. */
async function planFor(kind: "bid" | "record", inputs: readonly string[], { templates }: Context) {
  if (kind === "record") return { kind, inputs };
  const { editsAgainst } = await import("../take/untaken.js");
  // a new file takes no other one's place, of whatever template
  return { kind, inputs, edits: editsAgainst(templates), templates: [] };
}
