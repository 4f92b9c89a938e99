import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { logoAt, mostLogoBytes } from "../../../engine/book/logo.js";
import { gif, png } from "../../support/pictures.js";

let folder: string;
let book: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-logo-"));
  book = join(folder, "office.xlsx");
  await mkdir(join(folder, "art"));
  await writeFile(join(folder, "art", "logo.png"), png(20));
  await writeFile(join(folder, "logo.gif"), gif);
  await writeFile(join(folder, "large.png"), new Uint8Array(mostLogoBytes + 1));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test("a logo is looked for from the folder of the office book", async () => {
  expect(await logoAt("art/logo.png", book, "company_logo")).toMatchObject({
    kind: "png",
    width: 20,
    height: 20,
  });
});

test.each([
  ["none there", "logo.png", "logo-missing", /logo\.png, named by company_logo .* does not exist/],
  ["another kind", "logo.gif", "logo-kind", /no PNG or JPEG/],
  ["too large", "large.png", "logo-too-large", /2000001 bytes; at most 2000000/],
  ["a folder", "art", "file-unreadable", /is a folder, not a file/],
])("%s: the error names file, rule and what to do", async (_, named, code, words) => {
  await expect(logoAt(named, book, "company_logo")).rejects.toMatchObject({
    code,
    message: expect.stringMatching(words),
  });
});
