import assert from "node:assert/strict";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { auditWorkbook } from "../../engine/audit/audit.js";
import { valuesOf } from "../../engine/book/values.js";
import { RillbookError } from "../../engine/errors.js";
import { calculate, calculateFast } from "../../engine/evaluate/calculate.js";
import { FormulaError } from "../../engine/formula/formula-error.js";
import { parse } from "../../engine/formula/parse.js";
import { print } from "../../engine/formula/print.js";
import { rawJob } from "../../engine/job/read.js";
import { recordText } from "../../engine/job/save.js";
import { verifyTrail } from "../../engine/job/trail/verify.js";
import { validateJob } from "../../engine/job/validate.js";
import { takeWorkbook } from "../../engine/take/take.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { fence, fenceBook, fenceIdentity } from "../support/fence.js";
import { fenceModel, fenceRecord, fenceWorkbook } from "../support/fence-bid.js";
import { among, type Below, mutatedBytes, mutatedText } from "./mutate.js";

/** A part of the program that gets files from anyone: how one is made at random, and what must hold of it. */
export interface Target {
  readonly name: string;
  /** Ending of a saved input. */
  readonly ending: string;
  readonly make: (below: Below) => Uint8Array | Promise<Uint8Array>;
  /** Throws where the program does not end with a result or with a sentence. Returns whether it refused. */
  readonly check: (input: Uint8Array) => boolean | Promise<boolean>;
}

const longest = 10_000;

/** Refused with words for people, in good time; anything else is thrown on. */
async function refused(work: () => unknown): Promise<boolean> {
  const begun = Date.now();
  try {
    await work();
    return false;
  } catch (error) {
    if (!(error instanceof RillbookError) || error.exitStatus !== 2) throw error;
    assert.match(error.message, /[.?:!)]$|\n {2}- /);
    assert.doesNotMatch(error.message, /\[object|(?:is|version|template) undefined\b/);
    return true;
  } finally {
    assert.ok(Date.now() - begun < longest, "it took too long");
  }
}

const clean = fenceWorkbook();

async function workbook(below: Below): Promise<Uint8Array> {
  const bytes = await clean;
  if (below(8) === 0) return mutatedBytes(bytes, below);
  const parts = unzipSync(bytes);
  const names = Object.keys(parts).filter((name) => /\.(xml|rels)$/.test(name));
  for (let edits = 1 + below(2); edits > 0; edits--) {
    const name = below(3) === 0 ? among(below, names) : among(below, names.filter(isSheet));
    parts[name] = strToU8(mutatedText(strFromU8(parts[name] as Uint8Array), below));
  }
  return zipSync(parts, { level: 1 });
}

const isSheet = (name: string): boolean => /sheets\/sheet|sharedStrings|custom\.xml/.test(name);

const text = (input: Uint8Array): string => Buffer.from(input).toString("utf8");
const recordWritten = JSON.stringify(fenceRecord, null, 1);
const taker = { by: "A", time: "2026-03-04T05:06:07.089Z" };

/** A record that is not refused makes a bid that audits as nobody's doing. */
async function checkRecord(input: Uint8Array): Promise<void> {
  const raw = rawJob(text(input), [fence], "job.json");
  const job = validateJob(fenceModel, raw.record, "job.json");
  assert.deepEqual(validateJob(fenceModel, JSON.parse(recordText(job)), "again"), job);
  if (job.units !== fenceModel.system || verifyTrail(job.trail ?? []).length > 0) return;
  const given = valuesOf(fenceModel, job, fenceBook);
  calculateFast(fenceModel, given);
  const bytes = await writeWorkbook(fenceModel, calculate(fenceModel, given), {
    ...fenceIdentity(fenceModel),
    job: job.job,
    ...(job.about === undefined ? {} : { about: job.about }),
    trail: job.trail ?? [],
  });
  const { findings } = await auditWorkbook(readWorkbook(bytes), [fence], { book: fenceBook });
  const accused = findings.filter(
    ({ grade, code }) => grade === "wrong" && code !== "check-failed",
  );
  assert.deepEqual(accused, []);
}

const formulas = fenceModel.cells.flatMap(({ declaration }) =>
  "formula" in declaration && typeof declaration.formula === "string" ? [declaration.formula] : [],
);
const tokens = [
  ...["1", "2.5", "1e-7", "6[in]", '"a"', '""', "TRUE", "height", "runs.run", "above.x", "E1", "_"],
  ...["+", "-", "*", "/", "^", "&", "=", "<>", "<=", ">=", "<", ">", "%", "(", ")", ",", " ", "["],
  ...[
    "SUM(",
    "IF(",
    "ROUND(",
    "INDEX(",
    "{",
    "}",
    "'",
    '"',
    "#",
    "!",
    "$",
    "\u0000",
    "\ud800",
    "é",
  ],
];

function formulaText(below: Below): string {
  if (below(2) === 0) return mutatedText(among(below, formulas), below);
  const long = below(40) === 0 ? 4000 : 14;
  const repeated = among(below, tokens);
  return Array.from({ length: 1 + below(long) }, () =>
    long > 14 && below(10) > 0 ? repeated : among(below, tokens),
  ).join("");
}

const style = {
  reference: () => "x",
  prefixed: false,
  exponent: "E",
  quotes: "doubled",
} as const;

/** A formula that can be read is printed as one that reads the same. */
function checkFormula(input: Uint8Array): boolean {
  const written = text(input);
  try {
    const tree = parse(written);
    const printed = print(tree, { ...style, literalUnits: false });
    assert.equal(print(parse(printed), style), printed);
    return false;
  } catch (error) {
    if (!(error instanceof FormulaError)) throw error;
    return true;
  }
}

export const targets: readonly Target[] = [
  {
    name: "reader",
    ending: "xlsx",
    make: workbook,
    check: (input) => refused(() => readWorkbook(input)),
  },
  {
    name: "audit",
    ending: "xlsx",
    make: workbook,
    check: (input) =>
      refused(async () => {
        const { findings } = await auditWorkbook(readWorkbook(input), [fence], { book: fenceBook });
        for (const { found, expected, advice } of findings) {
          assert.doesNotMatch(`${found}${expected}${advice}`, /\[object|\bundefined\b/);
        }
      }),
  },
  {
    name: "take",
    ending: "xlsx",
    make: workbook,
    check: (input) =>
      refused(() => {
        const { job } = takeWorkbook(readWorkbook(input), [fence], "bid.xlsx", taker);
        const kept = JSON.parse(recordText(job));
        assert.deepEqual(verifyTrail(validateJob(fenceModel, kept, "taken").trail ?? []), []);
      }),
  },
  {
    name: "record",
    ending: "json",
    make: (below) => Buffer.from(mutatedText(recordWritten, below)),
    check: (input) => refused(() => checkRecord(input)),
  },
  {
    name: "formula",
    ending: "txt",
    make: (below) => Buffer.from(formulaText(below)),
    check: checkFormula,
  },
];
