import { Command, CommanderError } from "commander";
import { type ErrorName, errorCodes } from "../error-codes.js";
import { RillbookError } from "../errors.js";
import type { Template } from "../template/template.js";
import { shownJson, shownText } from "../text/shown.js";
import type { Context } from "./context.js";
import { toldByFiles } from "./given-files.js";
import { offerTemplateFile, withOwnTemplates } from "./template-option.js";
import { programVersion } from "./version.js";
import { type Voices, waiting } from "./waiting.js";

/** Each command's own file, which is read when it is asked for: most need only some of the libraries. */
const commands: Readonly<Record<string, () => Promise<(context: Context) => Command>>> = {
  start: async () => (await import("./start.js")).startCommand,
  bid: async () => (await import("./bid.js")).bidCommand,
  show: async () => (await import("./show.js")).showCommand,
  trace: async () => (await import("./trace.js")).traceCommand,
  set: async () => (await import("./set.js")).setCommand,
  take: async () => (await import("./take.js")).takeCommand,
  audit: async () => (await import("./audit.js")).auditCommand,
  seal: async () => (await import("./seal.js")).sealCommand,
  shorten: async () => (await import("./shorten.js")).shortenCommand,
  compare: async () => (await import("./compare.js")).compareCommand,
  rerun: async () => (await import("./rerun.js")).rerunCommand,
  weigh: async () => (await import("./weigh.js")).weighCommand,
  learn: async () => (await import("./learn.js")).learnCommand,
  office: async () => (await import("./office.js")).officeCommand,
  names: async () => (await import("./names.js")).namesCommand,
  print: async () => (await import("./print.js")).printCommand,
};

/** The command that the words begin with; all, where they begin with none, so that help lists them. */
function commandsFor([first = ""]: readonly string[]): string[] {
  if (first === "-V" || first === "--version") return [];
  return Object.hasOwn(commands, first) ? [first] : Object.keys(commands);
}

export type { Voices } from "./waiting.js";

/**
 * Runs a command line (without `node` and the program's name) and returns the exit
 * status: 0 done, 1 the bid does not stand (failed checks, cells in error), 2 bad input or usage, 3 a fault of the program.
 * @param templatesModule URL of a module that exports `templates`, for worker threads
 */
export async function run(
  given: readonly string[],
  known: readonly Template[],
  voices: Voices,
  templatesModule?: string,
): Promise<number> {
  const told = waiting(voices);
  const { progress, ask } = told;
  const out = (text: string) => told.out(shownText(text));
  const err = (text: string) => told.err(shownText(text));
  const json = (value: unknown, indent?: number) => told.out(`${shownJson(value, indent)}\n`);
  const failed = (error: unknown): number => {
    const status = statusOf(error, err);
    if (status !== 0 && given.includes("--json")) json({ error: asJson(error) });
    return status;
  };
  const own = await withOwnTemplates(given, known).catch(failed);
  if (typeof own === "number") return own;
  const { args, templates, files } = own;
  const context: Context = {
    templates,
    templateFiles: files,
    out,
    err,
    verdict: (words, good) => {
      const [on, off] = voices.color
        ? [good ? "\u001b[1;32m" : "\u001b[1;31m", "\u001b[0m"]
        : ["", ""];
      told.out(`${on}${shownText(words)}${off}\n`);
    },
    json,
    status: 0,
    ...(progress === undefined ? {} : { progress }),
    ...(ask === undefined ? {} : { ask: (words: string) => ask(shownText(words)) }),
    ...(templatesModule === undefined ? {} : { templatesModule }),
  };
  const program = new Command("rillbook")
    .description(
      `Estimates as workbooks in which every figure is a live formula. Templates: ${templates
        .filter(({ learns }) => learns === undefined)
        .map(({ name, title }) => `${name} (${title})`)
        .join(", ")}.`,
    )
    .addHelpText(
      "after",
      "\nExit status: 0 done; 1 the bid does not stand: failed checks or cells in error (it is written all the same); 2 bad input or usage; 3 a fault of the program.",
    );
  for (const name of commandsFor(args)) {
    const command = await commands[name]?.();
    if (command !== undefined) program.addCommand(command(context));
  }
  program.version(programVersion(), "-V, --version", "tell the version of the program");
  settle(program, { out, err });
  let asked: Command | undefined;
  program.hook("preAction", (_, command) => {
    asked = command;
    told.begin(`rillbook ${command.name()} …`);
  });
  if (args.length === 0) {
    out(program.helpInformation());
    return 0;
  }
  try {
    await program.parseAsync([...args], { from: "user" });
    return context.status;
  } catch (error) {
    return failed(await toldByFiles(error, asked, templates));
  }
}

/** Commander's own output goes where ours goes, and it must not end the process. */
function settle(program: Command, { out, err }: Voices): void {
  for (const command of [program, ...program.commands]) {
    command.exitOverride();
    command.configureOutput({ writeOut: out, writeErr: err });
    command.showHelpAfterError("(add --help for the usage and an example)");
    if (command !== program) offerTemplateFile(command);
  }
}

/** What went wrong, for programs. */
function asJson(error: unknown): { code: ErrorName; message: string; todo: string } {
  const code: ErrorName =
    error instanceof RillbookError
      ? error.code
      : error instanceof CommanderError
        ? "usage"
        : "program-fault";
  const message = error instanceof Error ? error.message : String(error);
  return { code, message, todo: errorCodes[code].todo };
}

function statusOf(error: unknown, err: (text: string) => void): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (error instanceof RillbookError) {
    err(`${error.code}: ${error.message}\n`);
    return error.exitStatus;
  }
  err(
    `program-fault: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
  );
  return 3;
}
