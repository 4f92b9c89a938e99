import type { Template } from "../template/template.js";
import type { Context } from "./context.js";

/** The names that `--template` may give, the default first, for a command's help. */
export const templateNames = ({ templates }: Pick<Context, "templates">): string =>
  [...new Set(templates.filter(({ learns }) => learns === undefined).map(({ name }) => name))]
    .map((name, i) => (i === 0 ? `${name}, the default` : name))
    .join("; ");

/**
 * Which template a new job is of, where the command line does not say: a person at a terminal is asked,
 * who may give its number or its name; else it is the first, and that is told.
 */
export async function whichTemplate({
  templates,
  ask,
  err,
}: Pick<Context, "templates" | "ask" | "err">): Promise<string | undefined> {
  // a workbook of learned rates is made by `learn`, and no job
  const jobs = templates.filter(({ learns }) => learns === undefined);
  const known = [...new Map(jobs.map((one) => [one.name, one])).values()];
  const [first, ...others] = known;
  if (first === undefined || others.length === 0) return undefined;
  if (ask === undefined) {
    err(`note: template ${first.name}. Others: ${others.map(asked).join(", ")}.\n`);
    return first.name;
  }
  const list = known.map(({ name, title }, i) => `  ${i + 1}  ${title} (${name})\n`).join("");
  const typed = (await ask(`What is to be built?\n${list}Number or name [1]: `)).trim();
  return known[Number(typed || 1) - 1]?.name ?? typed;
}

const asked = ({ name }: Template): string => `--template ${name}`;
