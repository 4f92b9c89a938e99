import { Command } from "commander";
import { type Audit, auditWorkbook } from "../audit/audit.js";
import { countsOf } from "../audit/report.js";
import { RillbookError } from "../errors.js";
import { readText } from "../files.js";
import { changeBytes } from "../output/change.js";
import { mustEndRight } from "../output/judge.js";
import { mustBeNew, writeNew } from "../output/write.js";
import {
  fingerprintOf,
  newKeyPair,
  type Sections,
  sealed,
  secretKey,
  withSeal,
} from "../seal/index.js";
import { readWorkbook } from "../workbook/read/read.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import type { Context } from "./context.js";

interface Options {
  readonly key?: string;
  readonly newKey?: string;
  readonly json?: true;
}

const help = `
A pair of keys is made once: office.pem signs and stays in the office, office.open.pem is for everybody.
The seal stands over inputs, prices, template, values and pages, and stays when LibreOffice or Gnumeric
save the bid. Without --key the digest alone is kept: that shows slips, and no forger.

Example:
  rillbook seal --new-key office.pem
  rillbook seal garden-corner.xlsx --key office.pem
  rillbook audit garden-corner.xlsx --key office.open.pem`;

/** `rillbook seal`: a bid that stands is sealed as it is. */
export function sealCommand(context: Context): Command {
  return new Command("seal")
    .description("seal a bid with the office's key, so that every later change can be shown")
    .argument("[workbook]", "clean bid workbook (.xlsx); the seal is put into it")
    .option("--key <pem>", "secret key of the office (Ed25519, PEM)")
    .option("--new-key <pem>", "make a pair of keys: this file, and its open key beside it")
    .option("--json", "tell the result as JSON")
    .addHelpText("after", help)
    .action(async (file: string | undefined, options: Options) => {
      if (options.newKey !== undefined && file === undefined && options.key === undefined) {
        await makeKeys(options.newKey, options, context);
      } else if (options.newKey === undefined && file !== undefined) {
        await sealFile(file, options, context);
      } else throw unclear();
    });
}

const unclear = (): RillbookError =>
  new RillbookError(
    "options-missing",
    "Give either a workbook to seal (with --key), or --new-key alone to make a pair of keys.",
  );

async function makeKeys(path: string, { json }: Options, context: Context): Promise<void> {
  mustEndRight(path, "secret key");
  const open = path.replace(/\.pem$/i, ".open.pem");
  await mustBeNew(path);
  await mustBeNew(open);
  const pair = newKeyPair();
  await writeNew(path, { kind: "secret key", inputs: [] }, pair.secret, 0o600);
  await writeNew(open, { kind: "open key", inputs: [] }, pair.open);
  const { fingerprint } = pair;
  if (json) return context.json({ secret: path, open, fingerprint }, 2);
  context.out(
    `Written: ${path} (secret: keep it in the office, with a copy) and ${open} (for everybody)\nFingerprint: ${fingerprint}\n`,
  );
}

async function sealFile(file: string, { key: path, json }: Options, context: Context) {
  const key = path === undefined ? undefined : secretKey(await readText(path, "key"), path);
  // refused here where it is missing, too large or no workbook
  await readWorkbookFile(file, { sheets: () => false });
  const time = new Date().toISOString();
  const sections = await changeBytes(
    file,
    "bid",
    async (old = Buffer.alloc(0)) => {
      const content = readWorkbook(old, { look: true });
      const audit = await auditWorkbook(content, context.templates, { file });
      const made = sealable(file, audit);
      return { content: withSeal(old, sealed(made, time, key), file), result: made };
    },
    path === undefined ? [] : [path],
  );
  const fingerprint = key === undefined ? undefined : fingerprintOf(key);
  if (json) return context.json({ sealed: file, time, fingerprint, sections }, 2);
  const by =
    fingerprint === undefined
      ? "without a key: it shows slips, but anybody can make such a seal anew"
      : `by the key ${fingerprint}`;
  context.out(`Sealed: ${file}, at ${time}, ${by}\n`);
}

/** Throws RillbookError for a bid that is not clean, and for one that a key has sealed already. */
function sealable(file: string, audit: Audit): Sections {
  const { findings, seal, sections } = audit;
  const first = findings.find(({ grade }) => grade !== "to know");
  if (first !== undefined || sections === undefined) {
    throw new RillbookError(
      "seal-not-clean",
      `${file} is not sealed, since its audit is not clean: ${countsOf(audit)}. The first: ${first?.where}: ${first?.found}. To do: ${first?.advice} What is sealed is a bid written anew; rillbook audit ${file} tells all.`,
    );
  }
  if (seal.state === "whole") {
    throw new RillbookError(
      "seal-there",
      `${file} is sealed already, at ${seal.time} by the key ${seal.key}, and is left as it is. To seal by another key, write the bid anew.`,
    );
  }
  return sections;
}
