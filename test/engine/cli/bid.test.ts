import { mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readPictures } from "../../../engine/workbook/pictures/read.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { templates } from "../../../sheets/templates/index.js";
import { demoFolder } from "../../support/demo.js";
import { fenceBook, fenceJob } from "../../support/fence.js";
import { drawnOn, oneCell, pic, png } from "../../support/pictures.js";
import { spoken } from "../../support/spoken.js";
import { fenceThree } from "../rerun/templates.js";

let folder: string;
let demo: { inputs: Record<string, unknown> } & Record<string, unknown>;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-bid-"));
  demo = JSON.parse(await readFile(join(demoFolder, "garden-corner.json"), "utf8"));
  demo.office = join(demoFolder, "office-book.json");
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const rillbook = (...args: string[]) => spoken(args, templates);

async function jobFile(name: string, content: unknown): Promise<string> {
  const file = join(folder, name);
  await writeFile(file, typeof content === "string" ? content : JSON.stringify(content));
  return file;
}

const withInputs = (changed: Record<string, unknown>) => ({
  ...demo,
  inputs: { ...demo.inputs, ...changed },
});
const withFall = (changed: Record<string, unknown>) => {
  const [fall] = demo.inputs.falls as Record<string, unknown>[];
  return withInputs({ falls: [{ ...fall, ...changed }] });
};

/** Each: what is wrong, the job record, and what the message must say. */
const badInputs: [string, () => unknown, RegExp][] = [
  [
    "unknown name",
    () => withInputs({ custommer: "x" }),
    /"custommer" is not known.*Did you mean "customer"/,
  ],
  [
    "unknown column",
    () => withFall({ widht: 3 }),
    /inputs\.falls\.widht\[1\]: the column "widht" .*Did you mean "width"/,
  ],
  [
    "text for a number",
    () => withFall({ width: "wide" }),
    /inputs\.falls\.width\[1\] is "wide", but must be a number of ft, without quotes \(/,
  ],
  [
    "out of range",
    () => withInputs({ start_month: 13 }),
    /inputs\.start_month is 13, but must be <= 12/,
  ],
  [
    "not whole",
    () => withInputs({ start_month: 4.5 }),
    /start_month is 4\.5, but must be a whole number/,
  ],
  ["negative width", () => withFall({ width: -2 }), /falls\.width\[1\] is -2, but must be >=/],
  [
    "a 13th fall",
    () => withInputs({ falls: Array(13).fill((demo.inputs.falls as unknown[])[0]) }),
    /inputs\.falls: 13 rows, but the table holds 12/,
  ],
  [
    "unknown look",
    () => withFall({ look: "roaring" }),
    /falls\.look\[1\] is "roaring", but must be one of: thin sheet/,
  ],
  [
    "no such day",
    () => withInputs({ bid_date: "2026-02-30" }),
    /bid_date is "2026-02-30", but there is no such day/,
  ],
  ["broken JSON", () => '{ "rillbook": 1, ', /is not valid JSON/],
  ["not an object", () => [1, 2], /is not a job record/],
  [
    "another version",
    () => ({ ...demo, version: 9 }),
    /version 9 of the template waterfall; this program has version 1/,
  ],
  [
    "another template",
    () => ({ ...demo, template: "waterfal" }),
    /"waterfal", which is not known\. Did you mean "waterfall"/,
  ],
  [
    "unknown units",
    () => ({ ...demo, units: "metric" }),
    /units is "metric", but must be "us" or "si"/,
  ],
  [
    "no office book",
    () => ({ ...demo, office: "gone.json" }),
    /gone\.json does not exist\. Give it where it lies: --office <file>\. Only .*"rillbook office --new gone\.xlsx".* other prices than/,
  ],
  [
    "a pump that the book lacks",
    () => withInputs({ pump_choice: "P-6" }),
    /inputs\.pump_choice \(Pump\) is "P-6", which is not in the pumps of .* Did you mean "P-\d+"\?/,
  ],
  [
    "an item that the book lacks",
    () => withInputs({ options: [{ description: "More", code: "gold-plate" }] }),
    /inputs\.options\.code\[1\] .*is "gold-plate", which is not in the items of the office book/,
  ],
];

describe("bad input is told with path, value and rule, and nothing is written", () => {
  test.each(badInputs)("%s", async (what, record, message) => {
    const file = await jobFile(`${what.replaceAll(" ", "-")}.json`, record());
    const output = join(folder, `${what.replaceAll(" ", "-")}.xlsx`);
    const { status, out, err } = await rillbook("bid", file, "-o", output);
    expect(err).toMatch(message);
    expect({ status, out }).toEqual({ status: 2, out: "" });
    expect(await stat(output).catch(() => "nothing")).toBe("nothing");
  });

  test("a job record that does not exist", async () => {
    const { status, err } = await rillbook("bid", join(folder, "none.json"), "-o", "x.xlsx");
    expect(status).toBe(2);
    expect(err).toMatch(/none\.json does not exist/);
  });

  test("usage", async () => {
    const job = await jobFile("job.json", demo);
    const { status, err } = await rillbook("bid", job);
    expect(status).toBe(2);
    expect(err).toMatch(/^output-missing: .*-o job\.xlsx/);
    const refreshed = await rillbook("bid", job, "-o", "x.xlsx", "--refresh-prices");
    expect(refreshed.err).toMatch(/^usage: .*Leave --refresh-prices out/);
  });
});

describe("bid", () => {
  test("a record that lacks inputs is written, does not stand, and says what is missing", async () => {
    const file = await jobFile("lacking.json", withInputs({ customer: null }));
    const { status, out, err } = await rillbook("bid", file, "-o", join(folder, "lacking.xlsx"));
    expect(status).toBe(1);
    expect(out).toMatch(/^NOT READY: no price yet, 1 of the first fields/m);
    expect(out).not.toMatch(/^Price\b/m);
    expect(out).toMatch(/^Written: /m);
    expect(err).toMatch(
      /^Still missing, in the order of the walk:\n {2}Customer \(customer, Walk!/,
    );
  });

  test("writes the workbook, tells the price, and leaves no part behind", async () => {
    const file = await jobFile("good.json", demo);
    const output = join(folder, "good.xlsx");
    const { status, out } = await rillbook("bid", file, "-o", output);
    expect(out).toMatch(/^READY.*\nPrice +\$[\d,]+\.00\n(.+\n){3}Written: /);
    expect(status).toBe(0);
    expect((await stat(output)).size).toBeGreaterThan(100_000);
    expect((await readdir(folder)).filter((name) => name.endsWith(".part"))).toEqual([]);
  });

  test("a failed check: status 1, written all the same, and said", async () => {
    const file = await jobFile("small-basin.json", withInputs({ basin_length: 3, basin_width: 3 }));
    const output = join(folder, "small-basin.xlsx");
    const { status, out, err } = await rillbook("bid", file, "-o", output, "--json");
    expect(status).toBe(1);
    expect(err).toBe("");
    const told = JSON.parse(out) as { failed: { name: string; level: string; message: string }[] };
    expect(told.failed.filter(({ level }) => level === "must").map(({ name }) => name)).toContain(
      "basin_holds",
    );
    expect((await stat(output)).size).toBeGreaterThan(100_000);
  });

  test("failed checks are told by sheet and label, many of one kind in one line", async () => {
    const file = await jobFile("late.json", withInputs({ bid_date: "2040-01-01" }));
    const { status, err } = await rillbook("bid", file, "-o", join(folder, "late.xlsx"));
    expect(err).toMatch(
      /^(check failed|warning): [A-Z][^:]*, [^:]*: \d+ rows, such as\n( {2}.*\n){3} {2}All are on the sheet Checks/m,
    );
    expect(err.split("\n").length).toBeLessThan(40);
    expect(status).toBe(1);
  });

  test.each([
    [
      "folder missing",
      async () => join(folder, "no", "such", "bid.xlsx"),
      /folder .* does not exist/,
    ],
    [
      "a folder of that name",
      async () => {
        await mkdir(join(folder, "taken.xlsx"), { recursive: true });
        return join(folder, "taken.xlsx");
      },
      /is a folder, not a file/,
    ],
    [
      "open in a spreadsheet",
      async () => {
        await writeFile(join(folder, "open.xlsx"), "old");
        await writeFile(join(folder, ".~lock.open.xlsx#"), "");
        return join(folder, "open.xlsx");
      },
      /is open in a spreadsheet/,
    ],
  ])("output: %s", async (_, place, message) => {
    const file = await jobFile("output.json", demo);
    const { status, err } = await rillbook("bid", file, "-o", await place());
    expect(err).toMatch(message);
    expect(status).toBe(2);
  });
});

describe("start, show, names", () => {
  test("show: values by name, tables as rows, in text and JSON", async () => {
    const file = await jobFile("show.json", demo);
    const text = await rillbook("show", file, "total_flow", "falls");
    expect(text.out).toMatch(
      /^total_flow {2}50 gal\/min\nfalls:\n {2}row +1\n {2}name +Corner fall\n {2}level +1\n/,
    );
    const json = await rillbook("show", file, "total_flow", "falls", "--json");
    const shown = JSON.parse(json.out);
    expect(shown.total_flow.unit).toBe("gal/min");
    expect(shown.total_flow.value).toBeCloseTo(50, 3);
    expect(shown.falls).toHaveLength(1);
    expect(shown.falls[0].width).toEqual({ value: 2.5, unit: "ft" });
  });

  test("show: an unknown name is told with the nearest", async () => {
    const file = await jobFile("unknown.json", demo);
    const { status, err } = await rillbook("show", file, "totl_flow");
    expect(status).toBe(2);
    expect(err).toMatch(/"totl_flow" is not in template waterfall\. Did you mean "total_flow"/);
  });

  test("names lists each with unit, formula and source", async () => {
    const { out } = await rillbook("names");
    expect(out).toMatch(/^stream_length \| calc \| ft \| Stream length \| = /m);
    expect(out).toMatch(/^PIPE_SPEED \| named formula \| speed \| .*source: continuity/m);
  });

  test("names with words lists those that have them; none is told with what is near", async () => {
    const { out } = await rillbook("names", "STREAM", "length");
    expect(out).toMatch(/^stream_length \| /m);
    const lines = out.trimEnd().split("\n");
    expect(lines.every((line) => /stream/i.test(line) && /length/i.test(line))).toBe(true);
    const none = await rillbook("names", "strem_length");
    expect(none.status).toBe(2);
    expect(none.err).toMatch(
      /^name-unknown: No name has "strem_length" in it .* Did you mean "stream_length"\?/,
    );
  });

  test("a table is shown with the columns that people read; any is shown by its name", async () => {
    const file = await jobFile("shown.json", demo);
    const { out } = await rillbook("show", file, "materials", "materials.book_share");
    const keys = [...out.matchAll(/^ {2}(\w+)/gm)].map(([, key]) => key);
    expect(keys).toContain("cost");
    for (const inner of ["at", "book_share", "office_rules_status"]) {
      expect(keys).not.toContain(inner);
    }
    expect(out).toMatch(/^materials\.book_share: /m);
  });

  test.each(["start", "bid", "show", "names", "trace", "set", "take", "audit", "rerun", "weigh"])(
    "%s has help with an example",
    async (command) => {
      const { status, out } = await rillbook(command, "--help");
      expect(status).toBe(0);
      expect(out).toMatch(/Examples?:\n {2}rillbook /);
    },
  );
});

test("a photo on a bid is there after take and the next bid over it", async () => {
  const { mark: _, ...prices } = fenceBook;
  await jobFile("prices.json", prices);
  const job = await jobFile("photo.json", { ...fenceJob, office: "prices.json" });
  const bid = join(folder, "photo.xlsx");
  const fenced = (...args: string[]) => spoken(args, [fenceThree]);
  await fenced("bid", job, "-o", bid);
  const sheet = readWorkbook(await readFile(bid)).sheets[1]?.name ?? "";
  const anchor = oneCell(18, 4, pic("a"));
  const photo = png();
  await writeFile(bid, drawnOn(await readFile(bid), sheet, [anchor], { a: { file: photo } }));
  const back = join(folder, "photo-taken.json");
  const taken = await fenced("take", bid, "-o", back, "--by", "Office");
  expect(taken.status, taken.err).toBe(0);
  const again = await fenced("bid", back, "-o", bid);
  expect(again.err).not.toMatch(/drawings-lost/);
  expect(readPictures(await readFile(bid))).toMatchObject({
    pictures: [{ sheet, kind: "png", bytes: photo }],
    left: [],
  });
});
