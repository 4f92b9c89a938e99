import { resolve } from "node:path";
import { type Command, Option } from "commander";
import { RillbookError } from "../errors.js";
import { isTemplateFile, templatesFrom } from "../template/from-file.js";
import type { Template } from "../template/template.js";

/** A command line without the files that it named by `--template`, and what they bring. */
export interface WithOwn {
  readonly args: readonly string[];
  readonly templates: readonly Template[];
  readonly files: readonly string[];
}

/** The commands whose own `--template` names one template; it may be one of a file. */
const naming = new Set(["start", "names", "office"]);

/**
 * Loads the template files that a command line names. Their templates come first, so that a command that wants
 * one takes the office's own. Rejects with RillbookError for a file that brings none, and for a name and
 * version that are taken.
 */
export async function withOwnTemplates(
  args: readonly string[],
  known: readonly Template[],
): Promise<WithOwn> {
  const kept: string[] = [];
  const files: string[] = [];
  for (let i = 0; i < args.length; i++) {
    const arg = args[i] as string;
    const given = arg === "--template" ? args[i + 1] : /^--template=(.*)$/s.exec(arg)?.[1];
    if (given === undefined || !isTemplateFile(given)) kept.push(arg);
    else {
      files.push(resolve(given));
      if (arg === "--template") i++;
    }
  }
  if (files.length === 0) return { args, templates: known, files };
  const own = (await Promise.all(files.map(templatesFrom))).flat();
  for (const one of own) mustBeFree(one, [...known, ...own.filter((other) => other !== one)]);
  const named = kept.some((arg) => /^--template(=|$)/.test(arg));
  const name = own[0]?.name;
  const asked = naming.has(args[0] ?? "") && !named && name !== undefined;
  const all = asked ? [...kept, "--template", name] : kept;
  return { args: all, templates: [...own, ...known], files };
}

function mustBeFree({ name, version, own }: Template, others: readonly Template[]): void {
  if (!others.some((one) => one.name === name && one.version === version)) return;
  throw new RillbookError(
    "template-taken",
    `The template file ${own?.file} brings ${name}, version ${version}, which is there already. Give it a name of its own.`,
  );
}

/** Every command takes a file; what is told of the option says so. */
export function offerTemplateFile(command: Command): void {
  const own = command.options.find(({ long }) => long === "--template");
  if (own !== undefined) {
    own.description += "; or a file (.js, .mjs) with templates of the office's own";
    return;
  }
  command.addOption(
    new Option(
      "--template <file>",
      "a file (.js, .mjs) with templates of the office's own",
    ).argParser(mustBeFile),
  );
}

function mustBeFile(given: string): never {
  throw new RillbookError(
    "template-file",
    `--template is ${JSON.stringify(given)}, but this command takes a file there: a job or a workbook names its template itself. Leave it out, or name a .js or .mjs.`,
  );
}
