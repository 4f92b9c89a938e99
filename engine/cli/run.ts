import { Command, CommanderError } from "commander";
import { RillbookError } from "../errors.js";
import type { Template } from "../template/template.js";
import { shownJson, shownText } from "../text/shown.js";
import { auditCommand } from "./audit.js";
import { bidCommand } from "./bid.js";
import { compareCommand } from "./compare.js";
import type { Context } from "./context.js";
import { namesCommand } from "./names.js";
import { officeCommand } from "./office.js";
import { printCommand } from "./print.js";
import { rerunCommand } from "./rerun.js";
import { sealCommand } from "./seal.js";
import { setCommand } from "./set.js";
import { showCommand } from "./show.js";
import { startCommand } from "./start.js";
import { takeCommand } from "./take.js";
import { traceCommand } from "./trace.js";
import { programVersion } from "./version.js";
import { type Voices, waiting } from "./waiting.js";
import { weighCommand } from "./weigh.js";

export type { Voices } from "./waiting.js";

/**
 * Runs a command line (without `node` and the program's name) and returns the exit
 * status: 0 done, 1 the bid does not stand (failed checks, cells in error), 2 bad input or usage, 3 a fault of the program.
 * @param templatesModule URL of a module that exports `templates`, for worker threads
 */
export async function run(
  args: readonly string[],
  templates: readonly Template[],
  voices: Voices,
  templatesModule?: string,
): Promise<number> {
  const told = waiting(voices);
  const { progress } = told;
  const out = (text: string) => told.out(shownText(text));
  const err = (text: string) => told.err(shownText(text));
  const context: Context = {
    templates,
    out,
    err,
    verdict: (words, good) => {
      const [on, off] = voices.color
        ? [good ? "\u001b[1;32m" : "\u001b[1;31m", "\u001b[0m"]
        : ["", ""];
      told.out(`${on}${shownText(words)}${off}\n`);
    },
    json: (value, indent) => told.out(`${shownJson(value, indent)}\n`),
    status: 0,
    ...(progress === undefined ? {} : { progress }),
    ...(templatesModule === undefined ? {} : { templatesModule }),
  };
  const program = new Command("rillbook")
    .description(
      `Estimates as workbooks in which every figure is a live formula. Templates: ${templates.map(({ name, title }) => `${name} (${title})`).join(", ")}.`,
    )
    .addHelpText(
      "after",
      "\nExit status: 0 done; 1 the bid does not stand: failed checks or cells in error (it is written all the same); 2 bad input or usage; 3 a fault of the program.",
    );
  for (const command of [
    startCommand,
    bidCommand,
    showCommand,
    traceCommand,
    setCommand,
    takeCommand,
    auditCommand,
    sealCommand,
    compareCommand,
    rerunCommand,
    weighCommand,
    officeCommand,
    namesCommand,
    printCommand,
  ]) {
    program.addCommand(command(context));
  }
  program.version(programVersion(), "-V, --version", "tell the version of the program");
  settle(program, { out, err });
  program.hook("preAction", (_, command) => told.begin(`rillbook ${command.name()} …`));
  if (args.length === 0) {
    out(program.helpInformation());
    return 0;
  }
  try {
    await program.parseAsync([...args], { from: "user" });
    return context.status;
  } catch (error) {
    return statusOf(error, err);
  }
}

/** Commander's own output goes where ours goes, and it must not end the process. */
function settle(program: Command, { out, err }: Voices): void {
  for (const command of [program, ...program.commands]) {
    command.exitOverride();
    command.configureOutput({ writeOut: out, writeErr: err });
    command.showHelpAfterError("(add --help for the usage and an example)");
  }
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
