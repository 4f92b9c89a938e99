import { execFile } from "node:child_process";
import {
  copyFile,
  link,
  lstat,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rename,
  rm,
  symlink,
  writeFile,
} from "node:fs/promises";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { promisify } from "node:util";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { modelOf } from "../../../engine/template/models.js";
import { fenceBook, fenceJob } from "../../support/fence.js";
import { spoken } from "../../support/spoken.js";
import { Tampered } from "../../support/tamper.js";
import { typedOver } from "../../support/typed-over.js";
import { fenceThree } from "../rerun/templates.js";

const templates = [fenceThree];
const model = modelOf(fenceThree, "us");

/** A folder with one of everything that commands read, made once and copied for each test. */
let stock: string;
let folder: string;
const at = (name: string) => join(folder, name);
const rillbook = (...args: string[]) => spoken(args, templates);

beforeAll(async () => {
  stock = await mkdtemp(join(tmpdir(), "rillbook-stock-"));
  folder = stock;
  const { mark: _, ...book } = fenceBook;
  const record = { ...fenceJob, office: "book.json" };
  await writeFile(at("book.json"), JSON.stringify(book));
  await writeFile(at("job.json"), JSON.stringify(record));
  const wider = { ...record, inputs: { ...record.inputs, height: 6 } };
  await writeFile(at("wider.json"), JSON.stringify(wider));
  await rillbook("bid", at("job.json"), "-o", at("bid.xlsx"));
  await rillbook(
    "office",
    "--new",
    at("book.xlsx"),
    "--template",
    "fence",
    "--from",
    at("book.json"),
  );
  await rillbook("compare", at("job.json"), at("wider.json"), "-o", at("order.xlsx"));
  await rillbook("compare", at("job.json"), at("wider.json"), "-o", at("order.md"));
  await rillbook("rerun", at("job.json"), "--office", at("book.json"), "-o", at("rerun.xlsx"));
  const part = ["--office", at("book.json"), "--part", "1/1", "-o", at("part.xlsx")];
  await rillbook("rerun", at("job.json"), ...part);
  await rename(at("part.part-1-of-1.jsonl"), at("part.jsonl"));
  await rillbook("audit", at("bid.xlsx"), "--report", at("audit.md"));
  await writeFile(at("letter.txt"), "Dear customer");
  await writeFile(at("strange.zip"), "PK\u0003\u0004 and nothing more");
});
afterAll(() => rm(stock, { recursive: true }));

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-outputs-"));
  for (const name of await readdir(stock)) await copyFile(join(stock, name), at(name));
});
afterEach(() => rm(folder, { recursive: true }));

/** Each command that writes, given the file to write to; and the ending of that file's name. */
const commands: Record<string, [ending: string, (target: string) => string[]]> = {
  bid: [".xlsx", (to) => ["bid", at("job.json"), "-o", to]],
  "compare to a workbook": [
    ".xlsx",
    (to) => ["compare", at("job.json"), at("wider.json"), "-o", to],
  ],
  "compare to Markdown": [".md", (to) => ["compare", at("job.json"), at("wider.json"), "-o", to]],
  audit: [".md", (to) => ["audit", at("bid.xlsx"), "--office", at("book.json"), "--report", to]],
  rerun: [".xlsx", (to) => ["rerun", at("job.json"), "--office", at("book.json"), "-o", to]],
  "rerun's lines": [
    ".jsonl",
    (to) => [
      ...["rerun", at("job.json"), "--office", at("book.json")],
      ...["-o", to.replace(/\.jsonl$/, ".xlsx")],
    ],
  ],
  "rerun --join": [".xlsx", (to) => ["rerun", "--join", at("part.jsonl"), "-o", to]],
  start: [".json", (to) => ["start", to, "--template", "fence", "--office", at("book.json")]],
  "office --new": [
    ".xlsx",
    (to) => ["office", "--new", to, "--template", "fence", "--from", at("book.json")],
  ],
  set: [".json", (to) => ["set", to, "height=7", "--by", "A", "--from", "drawing"]],
  take: [".json", (to) => ["take", at("bid.xlsx"), "-o", to, "--by", "A"]],
};

/** Each place where nothing may be written, made for an ending. */
const places: Record<string, (ending: string) => Promise<string>> = {
  "a folder": async (ending) => {
    await mkdir(at(`folder${ending}`));
    return at(`folder${ending}`);
  },
  "a pipe": async (ending) => {
    await promisify(execFile)("mkfifo", [at(`pipe${ending}`)]);
    return at(`pipe${ending}`);
  },
  "a socket": async (ending) => {
    const server = createServer();
    await new Promise<void>((settle) => server.listen(at(`socket${ending}`), settle));
    server.unref();
    return at(`socket${ending}`);
  },
  "a device behind a link": async (ending) => {
    await symlink("/dev/null", at(`device${ending}`));
    return at(`device${ending}`);
  },
  "a letter": (ending) => copied("letter.txt", ending),
  "something like a zip": (ending) => copied("strange.zip", ending),
  "a folder that is not there": async (ending) => at(`none/file${ending}`),
};

async function copied(name: string, ending: string): Promise<string> {
  await copyFile(at(name), at(`copy${ending}`));
  return at(`copy${ending}`);
}

/** Everything in the folder: kind, place on the disk, rights, content. */
async function state(): Promise<unknown[]> {
  const names = (await readdir(folder)).sort();
  return Promise.all(
    names.map(async (name) => {
      const { ino, mode } = await lstat(at(name));
      const content = (mode & 0o170000) === 0o100000 ? await readFile(at(name), "latin1") : "";
      return [name, ino, mode, content];
    }),
  );
}

/** Runs a command that must be refused and leave all as it was. */
async function refused(args: string[]): Promise<string> {
  const before = await state();
  const { status, err } = await rillbook(...args);
  expect([status, err.split(":")[0]]).toEqual([2, expect.stringMatching(/^[a-z-]+$/)]);
  expect(await state()).toEqual(before);
  return err;
}

describe.each(Object.entries(commands))("%s", (_, [ending, args]) => {
  test.each(Object.entries(places))("leaves %s as it is", async (_name, make) => {
    const target = await make(ending);
    const err = await refused(args(target));
    expect(err).toContain(target.replace(/.*\//, "").replace(/^file\..*/, "none"));
  });
});

/** Everything that a command reads, given to it as what to write: under its own name and by links. */
const readBy: [command: string, input: string][] = [
  ["bid", "job.json"],
  ["bid", "book.json"],
  ["compare to a workbook", "wider.json"],
  ["compare to Markdown", "job.json"],
  ["audit", "bid.xlsx"],
  ["audit", "book.json"],
  ["rerun", "job.json"],
  ["rerun", "book.json"],
  ["rerun --join", "part.jsonl"],
  ["take", "bid.xlsx"],
];

describe.each(readBy)("%s does not write over %s, which it reads", (command, input) => {
  const [ending, args] = commands[command] as (typeof commands)[string];
  test("under its own name", async () => {
    expect(await refused(args(at(input)))).toMatch(
      /^output-(is-input: .* is read by this very command|kind: .* must end in)/,
    );
  });
  test("by a hard link", async () => {
    await link(at(input), at(`other${ending}`));
    expect(await refused(args(at(`other${ending}`)))).toMatch(
      new RegExp(`^output-is-input: .*${input} is the same file`),
    );
  });
  test("by a symbolic link", async () => {
    await symlink(input, at(`other${ending}`));
    expect(await refused(args(at(`other${ending}`)))).toMatch(/^output-is-input: /);
  });
});

/** Files of ours, each of another kind. */
const kinds = ["job.json", "book.json", "bid.xlsx", "book.xlsx", "order.xlsx", "order.md"];
const more = ["rerun.xlsx", "rerun.jsonl", "audit.md"];
/** What a command may write over; `start` and `office --new` write over nothing. */
const own: Record<string, string[]> = {
  bid: ["bid.xlsx"],
  "compare to a workbook": ["order.xlsx"],
  "compare to Markdown": ["order.md"],
  audit: ["audit.md"],
  rerun: ["rerun.xlsx"],
  "rerun's lines": ["rerun.jsonl"],
  "rerun --join": ["rerun.xlsx"],
  set: ["job.json"],
  take: ["job.json"],
};

describe.each(Object.entries(commands))("%s", (command, [ending, args]) => {
  const others = [...kinds, ...more].filter((name) => !own[command]?.includes(name));
  test.each(others)("does not take the place of %s", async (name) => {
    await refused(args(await copied(name, ending)));
  });
  test("takes the place of its own kind", async () => {
    const [name = ""] = own[command] ?? [];
    if (name === "") return;
    const to = await copied(name, ending);
    if (command === "rerun's lines") await rm(at("rerun.xlsx"));
    const { status, err } = await rillbook(...args(to));
    expect([status, err]).toEqual([expect.toBeOneOf([0, 1]), expect.not.stringMatching(/^output/)]);
    expect(await readdir(folder)).not.toContainEqual(expect.stringMatching(/\.(part|lock)$/));
  });
});

test.each(Object.entries(commands).filter(([name]) => !["set", "rerun's lines"].includes(name)))(
  "%s writes no file whose name says something else",
  async (command, [ending, args]) => {
    const isRecord = extname(at(`new${ending}`)) === ".json";
    // a new job may be a record or a workbook
    const wrong = command === "start" ? ".csv" : isRecord ? ".xlsx" : ".json";
    expect(await refused(args(at(`new${wrong}`)))).toMatch(
      /^(output-kind|book-kind): .* (must end|name must)/,
    );
  },
);

describe("a bid that somebody edited", () => {
  const bid = () => rillbook("bid", at("job.json"), "-o", at("bid.xlsx"));
  const edited = async (edits: Record<string, number>) =>
    writeFile(at("bid.xlsx"), typedOver(await readFile(at("bid.xlsx")), model, edits));

  test("is not written over, and what to do is told", async () => {
    await edited({ height: 7, "runs.run[2]": 40 });
    expect(await refused(["bid", at("job.json"), "-o", at("bid.xlsx")])).toBe(
      `output-edited: ${at("bid.xlsx")} holds inputs that were changed in it and stand nowhere else: height, runs.run[2]. Take them in first (rillbook take ${at("bid.xlsx")} -o <job record> --by <who>), or name another file.\n`,
    );
  });

  test("is written over once it was taken in, and also when set went on from there", async () => {
    await edited({ height: 7 });
    const taken = await rillbook("take", at("bid.xlsx"), "-o", at("job.json"), "--by", "A");
    // stored results that do not follow are told, since nothing was calculated anew
    expect(taken).toMatchObject({ status: 1, out: expect.stringContaining("height: 7 ft") });
    const set = ["set", at("job.json"), "height=8", "--by", "A", "--from", "drawing"];
    expect((await rillbook(...set)).status).toBe(0);
    expect(await bid()).toMatchObject({ status: 0, err: "" });
  });

  test("is written over where the record gives the same value anyway", async () => {
    await edited({ height: 6 });
    expect((await rillbook("bid", at("wider.json"), "-o", at("bid.xlsx"))).status).toBe(0);
  });

  test.each<[string, (file: Tampered) => unknown, RegExp]>([
    [
      "a price",
      (file) =>
        file.change(
          file.partNames().find((part) => file.text(part).includes(">21.35<")) ?? "",
          (xml) => xml.replace(">21.35<", ">1.35<"),
        ),
      /more than its inputs: items\.unit_price\[1\]/,
    ],
  ])("is not written over where %s was changed", async (_, change, sentence) => {
    const file = new Tampered(await readFile(at("bid.xlsx")), model);
    change(file);
    await writeFile(at("bid.xlsx"), file.bytes());
    expect(await refused(["bid", at("job.json"), "-o", at("bid.xlsx")])).toMatch(sentence);
  });

  test("is not written over where its trail is gone, so that nobody can tell", async () => {
    const file = new Tampered(await readFile(at("bid.xlsx")), model);
    file.change("docProps/custom.xml", (xml) => xml.replace("rillbook inputs mark", "lost"));
    await writeFile(at("bid.xlsx"), file.bytes());
    expect(await refused(["bid", at("job.json"), "-o", at("bid.xlsx")])).toMatch(
      /may hold changes, which cannot be told/,
    );
  });
});

test("a workbook of another template, such as one of learned rates, is not written over", async () => {
  const file = new Tampered(await readFile(at("bid.xlsx")), model);
  file.change("docProps/custom.xml", (xml) =>
    xml.replace("<vt:lpwstr>fence</vt:lpwstr>", "<vt:lpwstr>learned</vt:lpwstr>"),
  );
  await writeFile(at("bid.xlsx"), file.bytes());
  expect(await refused(["bid", at("job.json"), "-o", at("bid.xlsx")])).toMatch(
    /^output-kind: .*bid\.xlsx is a workbook of template learned, and one of fence would take its place/,
  );
});

test("a change order that another program saved is not written over", async () => {
  const file = new Tampered(await readFile(at("order.xlsx")), model);
  file.change("docProps/core.xml", (xml) =>
    xml.replace(/(<dcterms:modified[^>]*>)[^<]*/, "$12026-05-05T10:00:00Z"),
  );
  await writeFile(at("order.xlsx"), file.bytes());
  const args = ["compare", at("job.json"), at("wider.json"), "-o", at("order.xlsx")];
  expect(await refused(args)).toMatch(/was saved by another program since rillbook wrote it/);
});

describe("a workbook given", () => {
  test.each([
    ["set", () => ["set", at("bid.xlsx"), "height=7", "--by", "A", "--from", "drawing"]],
    ["weigh", () => ["weigh", at("bid.xlsx")]],
  ])("to %s: the command that brings it into a record is named", async (_, args) => {
    expect(await refused(args())).toMatch(
      /^record-is-workbook: .*bid\.xlsx is a bid workbook.* rillbook take .*bid\.xlsx -o .*bid\.json/,
    );
  });

  test("show, trace and compare work on it as on its record", async () => {
    const both = (...args: string[]) =>
      Promise.all(
        ["job.json", "bid.xlsx"].map((name) => rillbook(args[0] ?? "", at(name), ...args.slice(1))),
      );
    for (const args of [
      ["show", "price", "runs"],
      ["show", "height", "--json"],
      ["trace", "labor"],
    ]) {
      const [record, workbook] = await both(...args);
      expect(workbook).toEqual(record);
      expect(workbook).toMatchObject({ status: 0, err: "" });
    }
    expect((await rillbook("compare", at("bid.xlsx"), at("wider.json"))).out).toContain(
      "| Height (height) | 5.50 ft | 6.00 ft |",
    );
  });

  test("show tells where the workbook itself shows something else", async () => {
    const edited = typedOver(await readFile(at("bid.xlsx")), model, { height: 7 });
    await writeFile(at("bid.xlsx"), edited);
    const { out, err } = await rillbook("show", at("bid.xlsx"), "height");
    expect(out).toBe("height  7.00 ft\n");
    expect(err).toMatch(/^The workbook itself shows something else in .* than its inputs give\./);
  });
});
