import { chmod, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { onlySheet } from "../../../engine/print/only-sheet.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { fence } from "../../support/fence.js";
import { fenceWorkbook } from "../../support/fence-bid.js";
import { pageFence, pageModel, pageWorkbook } from "../../support/fence-page.js";
import { spoken } from "../../support/spoken.js";
import { Tampered } from "../../support/tamper.js";
import { typedOver } from "../../support/typed-over.js";

// What prints is LibreOffice's work, which test/office tries. Here a stand-in takes its place, and shows
// what is asked of it, and what is done where it is missing, fails, or prints nothing.

let folder: string;
let bid: string;
let bytes: Uint8Array;
const path = process.env.PATH;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-print-test-"));
  bid = join(folder, "fence.xlsx");
  bytes = await pageWorkbook();
  await writeFile(bid, bytes);
  await mkdir(join(folder, "papers"));
});
afterEach(async () => {
  process.env.PATH = path;
  await rm(folder, { recursive: true, force: true });
});

/** A program of this name on a PATH of its own; its shell is the system's. */
async function standIn(script: string): Promise<void> {
  const programs = join(folder, "programs");
  await mkdir(programs, { recursive: true });
  const file = join(programs, "soffice");
  await writeFile(file, `#!/bin/sh\n${script}\n`);
  await chmod(file, 0o755);
  process.env.PATH = programs;
}

/** Prints each workbook that it is given: the last arguments, after the folder. */
const prints = `
while [ "$1" != "--outdir" ]; do shift; done
out=$2; shift 2
for file in "$@"; do name=\${file##*/}; printf '%%PDF-1.4\\nprinted\\n%%%%EOF\\n' > "$out/\${name%.xlsx}.pdf"; done
`;

const withoutProperties = (workbook: Uint8Array): Uint8Array =>
  new Tampered(workbook, pageModel)
    .change("docProps/custom.xml", (xml) => xml.replace(/<property .*<\/property>/s, ""))
    .bytes();

const print = (...args: string[]) => spoken(["print", bid, ...args], [pageFence]);
const papers = () => readdir(join(folder, "papers"));

describe("rillbook print", () => {
  test("each page asked for is a PDF of its own; the bid is only read", async () => {
    await standIn(prints);
    const { status, out } = await print("-o", join(folder, "papers"));
    expect(out).toBe(`Written: ${join(folder, "papers", "fence-letter.pdf")}\n`);
    expect(status).toBe(0);
    expect(await papers()).toEqual(["fence-letter.pdf"]);
    expect(new Uint8Array(await readFile(bid))).toEqual(bytes);
  });

  test("it takes the place of a page printed before, and of no other PDF", async () => {
    await standIn(prints);
    const into = join(folder, "papers");
    expect((await print("-o", into)).status).toBe(0);
    expect((await print("-o", into)).status).toBe(0);
    await writeFile(join(into, "fence-letter.pdf"), "%PDF-1.4\nsomebody's own\n%%EOF\n");
    const { status, err } = await print("-o", into);
    expect(status).toBe(2);
    expect(err).toContain("is a PDF that rillbook did not print");
    expect(await readFile(join(into, "fence-letter.pdf"), "utf8")).toContain("somebody's own");
  });

  test.each<[string, Record<string, number>, RegExp, number]>([
    [
      "a figure typed over its formula is wrong",
      { letter_price: 1 },
      /^This workbook is not as rillbook wrote it: 1 wrong \(the first: \S+ \(letter_price\): .*\)\. Run rillbook audit \S+fence\.xlsx$/m,
      1,
    ],
    [
      "an input that the trail does not tell is doubtful, and no result is out of date on paper",
      { height: 5 },
      /^This workbook is not as rillbook wrote it: 1 doubtful \(the first: \S+ \(height\): .*$/,
      0,
    ],
  ])("what is not as it was written is told, and printed: %s", async (_, edits, line, expected) => {
    await standIn(prints);
    await writeFile(bid, typedOver(bytes, pageModel, edits));
    const { status, err } = await print("-o", join(folder, "papers"));
    expect(err.trimEnd()).toMatch(line);
    expect(status).toBe(expected);
    expect(await papers()).toEqual(["fence-letter.pdf"]);
  });

  test("without LibreOffice it says so, and what to do", async () => {
    process.env.PATH = join(folder, "papers");
    const { status, err } = await print("-o", join(folder, "papers"));
    expect(status).toBe(2);
    expect(err).toMatch(/^printer-missing: .*soffice.*Install it, or open .*fence\.xlsx/);
    expect(await papers()).toEqual([]);
  });

  test.each([
    ["that fails", "echo broken >&2; exit 7", /^printing-failed: .*status 7, broken/],
    ["that ends well and prints nothing", "exit 0", /^printing-failed: .*nothing for the page/],
  ])("a program %s leaves no file behind", async (_, script, said) => {
    await standIn(script);
    const { status, err } = await print("-o", join(folder, "papers"));
    expect(status).toBe(3);
    expect(err).toMatch(said);
    expect(await papers()).toEqual([]);
  });

  test("a page that there is not, a workbook that is no bid, a folder that is missing", async () => {
    await standIn(prints);
    const page = await print("--pages", "letter,prices");
    expect(page.err).toMatch(/^page-unknown: --pages names "prices".*Choose of: letter\./);
    const other = await spoken(["print", bid], []);
    expect(other.err).toMatch(/^not-a-bid: /);
    const nowhere = await print("-o", join(folder, "no-such"));
    expect([page.status, other.status, nowhere.status]).toEqual([2, 2, 2]);
  });

  test("a template that hands out no page: said, and LibreOffice is not started with nothing to print", async () => {
    await standIn("sleep 60");
    await writeFile(bid, await fenceWorkbook());
    const { status, err } = await spoken(["print", bid], [fence]);
    expect(err).toMatch(/^page-missing: .*its template hands none out/);
    expect(status).toBe(2);
  });

  test("a bid whose properties a library dropped says on its first sheet what it is", async () => {
    await standIn(prints);
    await writeFile(bid, withoutProperties(bytes));
    expect((await print("-o", join(folder, "papers"))).status).toBe(0);
    expect(await papers()).toEqual(["fence-letter.pdf"]);
  });
});

test("in the copy that is printed one sheet is in sight, with all its cells", () => {
  const [before, after] = [bytes, onlySheet(bytes, "Letter")].map((one) => readWorkbook(one));
  const inSight = after?.sheets.filter(({ state }) => state === "visible");
  expect(inSight?.map(({ name }) => name)).toEqual(["Letter"]);
  // a hidden sheet prints too, as long as it has something to print
  const areas = after?.names.filter(({ name }) => name === "_xlnm.Print_Area");
  expect(areas?.filter(({ text }) => !text.includes("$XFA$1")).map(({ scope }) => scope)).toEqual([
    "Letter",
  ]);
  expect(areas?.length).toBe(after?.sheets.length);
  expect(after?.sheets.map(({ cells }) => cells)).toEqual(before?.sheets.map(({ cells }) => cells));
});
