import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { writeOfficeBook } from "../../../engine/book/write.js";
import type { Template } from "../../../engine/template/index.js";
import { layoutOf } from "../../../engine/template/office-layout.js";
import { fenceBook, fenceJob } from "../../support/fence.js";
import { fenceModel, fenceWorkbook } from "../../support/fence-bid.js";
import { spoken } from "../../support/spoken.js";
import { Tampered } from "../../support/tamper.js";
import { fenceThree } from "../rerun/templates.js";

/** Every command with every kind of file: each is told what it is, what is wanted, and which command leads there. */

const learned = { ...fenceThree, name: "learned", learns: {} } as unknown as Template;
const templates = [fenceThree, learned];

let folder: string;
const at = (name: string) => join(folder, name);
const rillbook = async (...args: string[]) => {
  const { status, out, err } = await spoken(args, templates);
  return { status, out, err: err.replaceAll(`${folder}/`, "") };
};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-kinds-"));
  const { mark: _, ...book } = fenceBook;
  const job = { ...fenceJob, office: "book.json", roles: undefined };
  await writeFile(at("job.json"), JSON.stringify(job));
  await writeFile(
    at("wider.json"),
    JSON.stringify({ ...job, inputs: { ...job.inputs, height: 6 } }),
  );
  await writeFile(at("book.json"), JSON.stringify(book));
  await writeFile(at("book.xlsx"), await writeOfficeBook(book, layoutOf(fenceThree)("us")));
  const bytes = await fenceWorkbook();
  await writeFile(at("bid.xlsx"), bytes);
  const rates = new Tampered(Buffer.from(bytes), fenceModel);
  rates.change("docProps/custom.xml", (xml) =>
    xml.replace("<vt:lpwstr>fence</vt:lpwstr>", "<vt:lpwstr>learned</vt:lpwstr>"),
  );
  await writeFile(at("rates.xlsx"), rates.bytes());
  await writeFile(at("page.pdf"), "%PDF-1.4\n%%EOF\n");
  await writeFile(at("items.csv"), "code,cost\npost,21.35\n");
  await writeFile(at("nothing.json"), "");
  await writeFile(at("nothing.xlsx"), "");
  const order = await spoken(
    ["compare", at("job.json"), at("wider.json"), "-o", at("order.xlsx")],
    templates,
  );
  if (order.status !== 0) throw new Error(order.err);
  const again = ["rerun", at("job.json"), "--office", at("book.json"), "--workers", "1"];
  await spoken([...again, "-o", at("again.xlsx")], templates);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Each kind of file: its name, and what it is told to be. */
const files = {
  record: ["job.json", "a job record of template fence"],
  "office book": ["book.xlsx", "an office book"],
  "office book in JSON": ["book.json", "an office book in JSON"],
  bid: ["bid.xlsx", "a bid workbook of template fence"],
  "learned rates": ["rates.xlsx", "a workbook of learned rates"],
  "change order": ["order.xlsx", "a comparison or change order"],
  "summary of a rerun": ["again.xlsx", "the summary of a rerun"],
  "lines of a rerun": ["again.jsonl", "result lines of a rerun"],
  PDF: ["page.pdf", "a PDF that rillbook did not print"],
  CSV: ["items.csv", "plain text, such as CSV"],
  "empty record": ["nothing.json", "an empty file"],
  "empty workbook": ["nothing.xlsx", "an empty file"],
} as const;
type Kind = keyof typeof files;

interface Case {
  readonly args: (file: string) => string[];
  readonly place: string;
  readonly wants: string;
  readonly takes: readonly Kind[];
}

const books = ["office book", "office book in JSON"] as const;
const workbooks = ["bid", "learned rates"] as const;
const who = ["--by", "A", "--from", "drawing"];
const one = (
  command: string,
  wants: string,
  takes: readonly Kind[],
  ...more: string[]
): [string, Case] => [
  command,
  { args: (file) => [command, file, ...more], place: `rillbook ${command}`, wants, takes },
];
const option = (
  flag: string,
  wants: string,
  takes: readonly Kind[],
  ...before: string[]
): [string, Case] => [
  `${before[0]} ${flag}`,
  { args: (file) => [...before, flag, file], place: flag, wants, takes },
];

const cases: readonly [string, Case][] = [
  one("audit", "a bid workbook", workbooks),
  one("seal", "a bid workbook", workbooks),
  one("take", "a bid workbook", workbooks, "-o", "new.json"),
  one("print", "a bid workbook", workbooks),
  one("bid", "a job record or a bid workbook", ["record", ...workbooks], "-o", "new.xlsx"),
  one("show", "a job record or a bid workbook", ["record", ...workbooks], "price"),
  one("trace", "a job record or a bid workbook", ["record", ...workbooks], "price"),
  one("compare", "a job record or a bid workbook", ["record", ...workbooks], "job.json"),
  one("set", "a job record", ["record"], "height=7", ...who),
  one("shorten", "a job record", ["record"], "-o", "new.json"),
  one("weigh", "a job record", ["record"], "--draws", "10"),
  one("office", "an office book", books),
  option(
    "--for",
    "a job record or a bid workbook",
    ["record", ...workbooks],
    "office",
    "book.json",
  ),
  option("--office", "an office book", books, "show", "job.json", "price"),
  option("--office", "an office book", books, "bid", "job.json", "-o", "new.xlsx"),
  option("--office", "an office book", books, "start", "new.xlsx", "--template", "fence"),
  option("--office", "an office book", books, "rerun", "job.json"),
  option("--office", "an office book", books, "learn", "job.json", "-o", "new.xlsx"),
  option("--since", "a job record", ["record"], "weigh", "job.json", "--draws", "10"),
  option(
    "--take",
    "a workbook of learned rates",
    ["learned rates"],
    "learn",
    "--into",
    "book.xlsx",
    "-o",
    "new.xlsx",
  ),
  option("--output", "the job record that the changes go into", ["record"], "take", "bid.xlsx"),
  option("--into", "an office book", books, "learn", "--take", "rates.xlsx", "-o", "new.xlsx"),
];

const kinds = Object.keys(files) as Kind[];
const isFile = (arg: string) => /\.(json|xlsx)$/.test(arg);

describe.each(cases)("%s", (_, { args, place, wants, takes }) => {
  // a record that is written may not have the name of a workbook, whatever it is: `take` tells that
  const isLeft = (kind: Kind) => place === "--output" && files[kind][0].endsWith(".xlsx");
  const wrong = kinds.filter((kind) => !takes.includes(kind) && !isLeft(kind));
  test.each(wrong)("given as %s", async (kind) => {
    const [name, means] = files[kind];
    const given = args(name).map((arg) => (isFile(arg) || arg === name ? at(arg) : arg));
    const { status, err } = await rillbook(...given);
    expect(status).toBe(2);
    expect(err).toContain(`: ${name} is ${means}, but ${place} takes ${wants}. `);
    // and what to do
    expect(err).toMatch(/takes [^.]*\. [A-Z].*\.\n$/s);
  });
});

test.each([
  ["audit", "job.json", "rillbook bid job.json -o job.xlsx"],
  ["set", "bid.xlsx", "rillbook take bid.xlsx -o bid.json --by <who>"],
  ["show", "book.json", "rillbook office check book.json"],
  ["shorten", "book.json", "rillbook office check book.json"],
  ["audit", "order.xlsx", "It was made of two jobs: name one of these."],
  ["audit", "again.jsonl", "It tells of many jobs: name one of these."],
])("%s %s: which command leads on", async (command, name, advice) => {
  const more: Readonly<Record<string, string[]>> = {
    set: ["height=7", ...who],
    shorten: ["-o", at("new.json")],
  };
  const { err } = await rillbook(command, at(name), ...(more[command] ?? []));
  expect(err).toContain(advice);
});

test("an error of another kind stays what it is", async () => {
  expect((await rillbook("bid", at("job.json"))).err).toMatch(/^output-missing: /);
  expect((await rillbook("bid", at("jbo.json"))).err).toMatch(/^file-unreadable: .*does not exist/);
  expect((await rillbook("show", at("none.json"))).err).toMatch(/^file-unreadable: /);
  expect((await rillbook("show", at("job.json"), "prize")).err).toMatch(/^name-unknown: /);
});

test("JSON that is none of ours is told as that where a workbook is wanted", async () => {
  await writeFile(at("other.json"), '{"a": 1}');
  const { status, err } = await rillbook("audit", at("other.json"));
  expect(status).toBe(2);
  expect(err).toMatch(
    /^workbook-kind: other\.json is JSON that is no job record and no office book, but rillbook audit takes a bid workbook\./,
  );
});
