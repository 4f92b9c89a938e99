import { createHash } from "node:crypto";
import { mkdtemp, readFile, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, expect, test } from "vitest";
import { run } from "../../../engine/cli/run.js";
import { fence } from "../../support/fence.js";
import { fenceModel, fenceWorkbook } from "../../support/fence-bid.js";
import { Tampered } from "../../support/tamper.js";

let folder: string;
let bytes: Uint8Array;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-seal-"));
  bytes = await fenceWorkbook();
  for (const name of ["office", "other"]) await rillbook("seal", "--new-key", at(`${name}.pem`));
});
afterAll(() => rm(folder, { recursive: true }));

const at = (name: string) => join(folder, name);

async function rillbook(...args: string[]): Promise<{ status: number; said: string }> {
  let said = "";
  const voice = (text: string) => {
    said += text;
  };
  return { status: await run(args, [fence], { out: voice, err: voice }), said };
}

/** A bid of its own for a test, sealed unless told otherwise. */
async function bid(name: string, ...key: string[]): Promise<string> {
  await writeFile(at(name), bytes);
  if (key.length > 0) await rillbook("seal", at(name), ...key);
  return at(name);
}

test("a pair of keys: the secret one for its owner alone, the open one told by its fingerprint", async () => {
  const { status, said } = await rillbook("seal", "--new-key", at("third.pem"));
  expect(status).toBe(0);
  expect((await stat(at("third.pem"))).mode & 0o777).toBe(0o600);
  const der = Buffer.from(
    (await readFile(at("third.open.pem"), "utf8")).replace(/-----[^-]*-----|\s/g, ""),
    "base64",
  );
  expect(said).toContain(createHash("sha256").update(der).digest("hex"));
  const again = await rillbook("seal", "--new-key", at("third.pem"));
  expect(again).toEqual({ status: 2, said: expect.stringContaining("exists already") });
});

test("sealed by the office's key, and known by it: file or fingerprint", async () => {
  const file = await bid("known.xlsx", "--key", at("office.pem"));
  const { status, said } = await rillbook("audit", file, "--key", at("office.open.pem"));
  expect(said).toContain("by the key that was given");
  expect(status).toBe(0);
  const [fingerprint = ""] = /[0-9a-f]{64}/.exec(said) ?? [];
  expect((await rillbook("audit", file, "--key", fingerprint)).status).toBe(0);
  expect((await rillbook("audit", file)).said).toContain("by the unverified key");
});

test("the secret key given to an audit is told, with the open one and its fingerprint", async () => {
  const file = await bid("secret.xlsx", "--key", at("office.pem"));
  const { status, said } = await rillbook("audit", file, "--key", at("office.pem"));
  expect(status).toBe(0);
  expect(said).toMatch(
    /^warning: \S*office\.pem is the secret key, .*office\.open\.pem, or its fingerprint [0-9a-f]{64}\.$/m,
  );
  const open = await rillbook("audit", file, "--key", at("office.open.pem"));
  expect(open.said).not.toContain("warning");
});

test("all but the properties stays byte for byte", async () => {
  const file = await bid("same.xlsx", "--key", at("office.pem"));
  const [before, after] = [unzipSync(bytes), unzipSync(new Uint8Array(await readFile(file)))];
  expect(Object.keys(after)).toEqual(Object.keys(before));
  for (const [name, part] of Object.entries(before)) {
    if (name !== "docProps/custom.xml") expect(after[name], name).toEqual(part);
  }
});

test("another key than the office's is told", async () => {
  const file = await bid("foreign.xlsx", "--key", at("other.pem"));
  const { status, said } = await rillbook("audit", file, "--key", at("office.open.pem"));
  expect(status).toBe(1);
  expect(said).toMatch(/WRONG {2}the seal\n {4}found: {4}sealed at .* by the key/);
});

test("without a key: the digest alone, which is no proof", async () => {
  const file = await bid("digest.xlsx");
  expect((await rillbook("seal", file)).said).toContain("anybody can make such a seal anew");
  expect((await rillbook("audit", file)).status).toBe(0);
  expect((await rillbook("audit", file, "--key", at("office.open.pem"))).status).toBe(1);
  // a key may come later
  expect((await rillbook("seal", file, "--key", at("office.pem"))).status).toBe(0);
  expect((await rillbook("audit", file, "--key", at("office.open.pem"))).status).toBe(0);
});

test("what is not clean is not sealed, and stays as it is", async () => {
  const book = new Tampered(bytes, fenceModel).cell("price", () => "<v>3500</v>");
  await writeFile(at("forged.xlsx"), book.bytes());
  const before = await readFile(at("forged.xlsx"));
  const { status, said } = await rillbook("seal", at("forged.xlsx"), "--key", at("office.pem"));
  expect(status).toBe(2);
  expect(said).toMatch(
    /seal-not-clean: .*audit is not clean: 3 wrong, 0 doubtful, \d+ to know\. The first: .*-o \S*forged-again\.xlsx/,
  );
  expect(said).toContain("the fixed value $3,500.00");
  expect(await readFile(at("forged.xlsx"))).toEqual(before);
});

test("of a bid whose custom properties were lost, it says what to do", async () => {
  const book = new Tampered(bytes, fenceModel);
  book.change("_rels/.rels", (xml) =>
    xml.replace(/<Relationship [^>]*custom-properties"[^>]*\/>/, ""),
  );
  await writeFile(at("lost.xlsx"), book.bytes());
  const { status, said } = await rillbook("seal", at("lost.xlsx"), "--key", at("office.pem"));
  expect(status).toBe(2);
  expect(said).toMatch(
    /properties are gone: .* To do: .* rillbook take -o; .* write the bid again\./,
  );
});

test("a seal is not replaced, neither by another one nor by a bid written over it", async () => {
  const file = await bid("once.xlsx", "--key", at("office.pem"));
  const before = await readFile(file);
  const again = await rillbook("seal", file, "--key", at("other.pem"));
  expect(again).toEqual({ status: 2, said: expect.stringContaining("is sealed already") });
  expect(await readFile(file)).toEqual(before);
});

test.each([
  ["nothing", []],
  ["a workbook and a new key", ["bid.xlsx", "--new-key", "k.pem"]],
  ["a key without a workbook", ["--key", "k.pem"]],
])("%s: told what to give", async (_, args) => {
  const { status, said } = await rillbook("seal", ...args);
  expect(status).toBe(2);
  expect(said).toContain("Give either a workbook to seal");
});

test("a file that is no key, for sealing and for auditing", async () => {
  const file = await bid("nokey.xlsx");
  for (const command of ["seal", "audit"]) {
    const { status, said } = await rillbook(command, file, "--key", file);
    expect(status).toBe(2);
    expect(said).toContain("is no key in PEM form");
  }
});
