import { stat } from "node:fs/promises";
import { basename, dirname, extname, join } from "node:path";
import type { Command } from "commander";
import type { ErrorName } from "../error-codes.js";
import { RillbookError } from "../errors.js";
import { readText } from "../files.js";
import { kindOfFile, type RecognizedFile } from "../output/kind.js";
import type { Template } from "../template/template.js";
import { identityOfWorkbook } from "../workbook/match/identity.js";

/** What a command takes in a place of its command line. */
type Wanted = "workbook" | "record" | "job" | "book" | "learned" | "into";

/** What each command takes: by the number of its argument, or the name of its option. */
const takenBy: Readonly<Record<string, Readonly<Record<string, Wanted>>>> = {
  audit: { 0: "workbook", office: "book" },
  bid: { 0: "job", office: "book" },
  compare: { 0: "job", 1: "job", office: "book" },
  learn: { office: "book", take: "learned", excludedIn: "learned", into: "book" },
  office: { last: "book", from: "book", for: "job" },
  print: { 0: "workbook" },
  rerun: { office: "book" },
  seal: { 0: "workbook" },
  set: { 0: "record" },
  shorten: { 0: "record" },
  show: { 0: "job", office: "book" },
  start: { office: "book" },
  take: { 0: "workbook", office: "book", output: "into" },
  trace: { 0: "job", office: "book" },
  weigh: { 0: "record", office: "book", since: "record", sinceOffice: "book" },
};

const wants: Readonly<Record<Wanted, string>> = {
  workbook: "a bid workbook",
  record: "a job record",
  job: "a job record or a bid workbook",
  book: "an office book",
  learned: "a workbook of learned rates",
  into: "the job record that the changes go into",
};

/** A file as it was found: what it is to whoever named it. */
interface Found {
  readonly is: Is;
  readonly means: string;
}

type Is =
  | "record"
  | "bid"
  | "learned"
  | "book"
  | "other workbook"
  | "many jobs"
  | "page"
  | "text"
  | "json";

/** What does for what. A workbook that does not say what it is may be any of them. */
const does: Readonly<Record<Wanted, readonly Is[]>> = {
  workbook: ["bid", "learned"],
  // of JSON, what reads records and books says best what it lacks to be one
  record: ["record", "json"],
  job: ["record", "bid", "learned", "json"],
  book: ["book", "json"],
  learned: ["learned"],
  into: ["record", "json"],
};

/**
 * What a command could not do with its files, told by what the files are: an office book where a job is wanted is an
 * office book, whatever its reader came upon first. All else is the error as it was.
 */
export async function toldByFiles(
  error: unknown,
  command: Command | undefined,
  templates: readonly Template[],
): Promise<unknown> {
  if (!(error instanceof RillbookError) || command === undefined) return error;
  // of the file that is written, all is said
  if (/^output-(?!missing)/.test(error.code)) return error;
  for (const one of filesOf(command)) {
    const wrong = await wrongFile(one, templates);
    if (wrong !== undefined) return wrong;
  }
  return error;
}

/** The error for a file that is of a kind that does not do in its place; undefined for one that may. */
export async function wrongFile(
  { place, file, wanted }: NamedFile,
  templates: readonly Template[],
): Promise<RillbookError | undefined> {
  const found = await foundAt(file, templates).catch(() => undefined);
  if (found === undefined || does[wanted].includes(found.is)) return undefined;
  return new RillbookError(
    codeFor(wanted, found),
    `${file} is ${found.means}, but ${place} takes ${wants[wanted]}. ${adviceFor(wanted, found, file)}`,
  );
}

/** A file on the command line, and what is wanted there. */
interface NamedFile {
  /** `rillbook audit`, or `--office`. */
  readonly place: string;
  readonly file: string;
  readonly wanted: Wanted;
}

function filesOf(command: Command): NamedFile[] {
  const name = command.name();
  const options: Readonly<Record<string, unknown>> = command.opts();
  return Object.entries(takenBy[name] ?? {}).flatMap(([key, wanted]) => {
    const isOption = !/^(?:\d+|last)$/.test(key);
    // a new office book is written and not read
    if (key === "last" && options.new === true) return [];
    const file = isOption
      ? options[key]
      : key === "last"
        ? command.args.at(-1)
        : command.args[Number(key)];
    if (typeof file !== "string") return [];
    const flag = key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
    return [{ place: isOption ? `--${flag}` : `rillbook ${name}`, file, wanted }];
  });
}

/** What a file is; undefined where that cannot be told, or is no file at all. */
async function foundAt(path: string, templates: readonly Template[]): Promise<Found | undefined> {
  if (!(await stat(path)).isFile()) return undefined;
  const file = await kindOfFile(path);
  if (file === undefined) return { is: "text", means: "an empty file" };
  const { means } = file;
  switch (file.kind) {
    case "bid":
      return asBid(file, templates);
    case "record":
      return { is: "record", means: `${means}${await templateSaid(path)}` };
    case "book":
      return { is: "book", means };
    case "comparison":
      return { is: "other workbook", means };
    case "summary":
    case "results":
      return { is: "many jobs", means };
    case "paper":
      return { is: "page", means };
    case undefined:
      return unwritten(means);
    default:
      return { is: "text", means };
  }
}

/** What rillbook did not write, as far as it can be told what it is. */
function unwritten(means: string): Found | undefined {
  if (/^JSON/.test(means))
    return { is: "json", means: "JSON that is no job record and no office book" };
  if (/office book/.test(means)) return { is: "book", means };
  if (/^plain text/.test(means)) return { is: "text", means };
  return /PDF/.test(means) ? { is: "page", means } : undefined;
}

function asBid({ means, content }: RecognizedFile, templates: readonly Template[]): Found {
  const { template = "" } = content === undefined ? {} : identityOfWorkbook(content);
  const learns = templates.some(({ name, learns }) => name === template && learns !== undefined);
  if (learns) return { is: "learned", means: wants.learned };
  return { is: "bid", means: `${means} of template ${template}` };
}

/** ` of template fence`, where the record can be read so far. */
async function templateSaid(path: string): Promise<string> {
  try {
    const { template } = JSON.parse(await readText(path, "job record"));
    return typeof template === "string" ? ` of template ${template}` : "";
  } catch {
    return "";
  }
}

function codeFor(wanted: Wanted, { is }: Found): ErrorName {
  if (wanted === "into") return "output-kind";
  if (wanted === "record" && is !== "text" && is !== "book" && is !== "page")
    return "record-is-workbook";
  return wanted === "workbook" ? "workbook-kind" : "file-kind";
}

const named = (file: string, ending: string): string =>
  join(dirname(file), basename(file, extname(file))) + ending;

/** What to do with a file of that kind, or where one of the kind wanted comes from. */
function adviceFor(wanted: Wanted, { is }: Found, file: string): string {
  if (wanted === "into")
    return "Name a record, as in -o job.json: a new one is made where there is none.";
  if (is === "book")
    return `To look at it: rillbook office check ${file}. A job names it by --office ${file}.`;
  if (wanted === "book") return "An office book is written by rillbook office --new office.xlsx.";
  if (wanted === "learned")
    return "One is written by rillbook learn <jobs> --office <file> -o rates.xlsx.";
  if (is === "record") return `Make one of it: rillbook bid ${file} -o ${named(file, ".xlsx")}.`;
  if (is === "bid" || is === "learned")
    return `Bring its inputs into one first: rillbook take ${file} -o ${named(file, ".json")} --by <who>.`;
  if (is === "other workbook") return "It was made of two jobs: name one of these.";
  if (is === "many jobs") return "It tells of many jobs: name one of these.";
  if (is === "page") return "If it was printed from a bid, name that bid.";
  return "A job begins with rillbook start yard.xlsx.";
}
