import { expect } from "vitest";
import type { Finding } from "../../../../../engine/audit/finding.js";
import { calculate } from "../../../../../engine/evaluate/calculate.js";
import { appended } from "../../../../../engine/job/trail/chain.js";
import {
  newKeyPair,
  propertiesOfSeal,
  type Seal,
  sealed,
  sealIn,
  secretKey,
  withSeal,
} from "../../../../../engine/seal/index.js";
import { readWorkbook } from "../../../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../../../engine/workbook/write/write.js";
import { fenceGiven, fenceIdentity } from "../../../../support/fence.js";
import { fenceTrail } from "../../../../support/fence-bid.js";
import { pageModel, pageWorkbook } from "../../../../support/fence-page.js";
import { restyle } from "../../../../support/restyle.js";
import { Tampered } from "../../../../support/tamper.js";
import { auditOf, type Told } from "../run.js";

const [office, other] = [newKeyPair(), newKeyPair()];
const at = "2026-06-01T09:00:00.000Z";

export const officeKey = office.fingerprint;

async function sealedBy(secret: string, bytes: Uint8Array): Promise<Uint8Array> {
  const { sections } = await auditOf(bytes);
  if (sections === undefined) throw new Error("The fence's template is not known.");
  return withSeal(bytes, sealed(sections, at, secretKey(secret, "key")), "fence");
}

const clean = await pageWorkbook();
export const sealedFence = await sealedBy(office.secret, clean);
const seal = sealIn(readWorkbook(sealedFence).properties.custom) as Seal;

/** A bid that the program itself wrote, of other inputs or another trail. */
function written(change: (values: ReturnType<typeof fenceGiven>) => void, trail = fenceTrail) {
  const given = fenceGiven(pageModel);
  change(given);
  const values = calculate(pageModel, given);
  return writeWorkbook(pageModel, values, { ...fenceIdentity(pageModel), trail });
}

const indexOf = (id: string) => pageModel.byId.get(id)?.index as number;
const setTo = (id: string, value: number) => (values: ReturnType<typeof fenceGiven>) => {
  values[indexOf(id)] = value;
};

/** The sealed fence with its seal changed, in the properties alone. */
function resealed(change: Partial<Seal>): Uint8Array {
  const book = new Tampered(sealedFence, pageModel);
  const [was, is] = [propertiesOfSeal(seal), propertiesOfSeal({ ...seal, ...change })];
  book.change("docProps/custom.xml", (xml) =>
    Object.keys(was).reduce((out, key) => out.replace(was[key] ?? "", is[key] ?? ""), xml),
  );
  return book.bytes();
}

/** A bid of a shorter fence, whose trail says so. */
const shorter = () =>
  written(
    setTo("runs.run[1]", 51.7),
    anew((change) => (change.input === "runs.run[1]" ? { new: 51.7 } : {})),
  );

/** A chain that holds, of entries that are not those that were written. */
const anew = (change: (entry: (typeof fenceTrail)[number]) => object) =>
  appended(
    [],
    fenceTrail.map((entry) => {
      const { number: _, hash: __, ...rest } = entry;
      return { ...rest, ...change(entry) };
    }),
  );

const unsealed = () => {
  const book = new Tampered(sealedFence, pageModel);
  book.change("docProps/custom.xml", (xml) =>
    xml.replace(/<property [^>]*name="rillbook seal(?:ed)?">.*?<\/property>/g, ""),
  );
  return book.bytes();
};

/** What is done to a sealed bid; `asked`: whether the audit is given the office's key. */
export interface SealCase extends Told {
  readonly bytes: () => Uint8Array | Promise<Uint8Array>;
  readonly asked: boolean;
  /** A further finding that it is to have. */
  readonly also?: Partial<Finding>;
}

const changed = (...sections: string[]) => ({
  code: "seal" as const,
  grade: "wrong" as const,
  found: `changed since it was sealed: ${sections.join(", ")}`,
});

/** The sealed bid with another number format on the price of its page. */
const relooked = () =>
  restyle(new Tampered(sealedFence, pageModel), "Letter", "B5", { format: '"$3,500"' }).bytes();

export const sealCases: readonly SealCase[] = [
  {
    what: "a bid as it was sealed",
    bytes: () => sealedFence,
    asked: true,
    verdict: "note",
    harmless: true,
    finds: {
      code: "seal",
      grade: "to know",
      found: expect.stringMatching(
        new RegExp(
          `text of the pages as sealed .*${office.fingerprint}; how .* no part of the seal$`,
        ),
      ),
      advice: "Nothing.",
    },
  },
  {
    what: "a sealed bid whose page looks otherwise",
    bytes: relooked,
    asked: true,
    verdict: "found",
    figure: true,
    finds: { code: "number-format", grade: "wrong" },
    also: {
      code: "seal",
      grade: "to know",
      found: expect.stringContaining(
        "no part of the seal, and is not as written: see the findings",
      ),
      advice: "See the findings of how the pages look.",
    },
  },
  {
    what: "the same, no key given to the audit",
    bytes: relooked,
    asked: false,
    verdict: "found",
    figure: true,
    finds: { code: "number-format", grade: "wrong" },
    also: { code: "seal", advice: expect.stringMatching(/^See the findings .* Hold the key/) },
  },
  {
    what: "a whole new bid of other inputs, trail and marks to fit, under the old seal",
    bytes: async () => withSeal(await shorter(), seal, "fence"),
    asked: false,
    verdict: "found",
    figure: true,
    finds: changed("inputs", "values", "pages"),
  },
  {
    what: "a whole new bid of other prices, list and mark to fit, under the old seal",
    bytes: async () => withSeal(await written(setTo("items.unit_price[1]", 19.35)), seal, "fence"),
    asked: false,
    verdict: "found",
    figure: true,
    finds: changed("prices", "values", "pages"),
  },
  {
    what: "a whole new chain with another person in it, under the old seal",
    bytes: async () => {
      const trail = anew(({ number }) => (number === 3 ? { by: "Estimator B" } : {}));
      return withSeal(await written(() => {}, trail), seal, "fence");
    },
    asked: false,
    verdict: "found",
    finds: changed("inputs"),
  },
  {
    what: "a stored figure of a sealed bid",
    bytes: () =>
      new Tampered(sealedFence, pageModel)
        .cell("letter_price", (inside) => inside.replace(/<v>.*<\/v>/, "<v>3500</v>"))
        .bytes(),
    asked: false,
    verdict: "found",
    figure: true,
    finds: changed("values", "pages"),
  },
  {
    what: "a whole new bid, sealed by a key of the forger's",
    bytes: async () => sealedBy(other.secret, await shorter()),
    asked: true,
    verdict: "found",
    figure: true,
    finds: { code: "seal", grade: "wrong", found: expect.stringContaining(other.fingerprint) },
  },
  {
    what: "the seal of a bid taken out, the office's key given",
    bytes: unsealed,
    asked: true,
    verdict: "found",
    finds: {
      ...({ code: "seal", grade: "wrong", found: "no seal" } as const),
      advice:
        "It has no seal. If the office seals its bids, ask it for the sealed one; the office itself seals it with rillbook seal --key.",
    },
  },
  {
    what: "the signature taken out, the digests left, the office's key given",
    bytes: async () => withSeal(clean, sealed(seal.sections, at), "fence"),
    asked: true,
    verdict: "found",
    finds: { code: "seal", grade: "wrong", found: expect.stringContaining("without a key") },
  },
  {
    what: "the time of a seal changed",
    bytes: () => resealed({ time: "2026-05-20T09:00:00.000Z" }),
    asked: false,
    verdict: "found",
    finds: { code: "seal", grade: "wrong", found: "a seal whose signature does not hold" },
  },
  {
    what: "the digests of a seal changed to fit",
    bytes: async () => {
      const bytes = await shorter();
      const { sections } = await auditOf(bytes);
      return withSeal(bytes, { ...seal, sections: sections as Seal["sections"] }, "fence");
    },
    asked: false,
    verdict: "found",
    figure: true,
    finds: { code: "seal", grade: "wrong", found: "a seal whose signature does not hold" },
  },
  {
    what: "a seal made before the last entry of its trail",
    bytes: async () =>
      withSeal(
        clean,
        sealed(seal.sections, "2026-05-01T09:00:00.000Z", secretKey(office.secret, "key")),
        "fence",
      ),
    asked: true,
    verdict: "found",
    finds: { code: "seal", grade: "doubtful", found: expect.stringContaining("before the last") },
  },
  {
    what: "a seal with words in place of it",
    bytes: () => {
      const book = new Tampered(sealedFence, pageModel);
      book.change("docProps/custom.xml", (xml) => xml.replace("rillbook-seal-1", "sealed"));
      return book.bytes();
    },
    asked: false,
    verdict: "found",
    finds: { code: "seal", grade: "wrong" },
  },
  {
    what: "a whole new bid under a key of the forger's, no key given to the audit",
    bytes: async () => sealedBy(other.secret, await shorter()),
    asked: false,
    verdict: "note",
    figure: true,
    finds: { code: "seal", grade: "to know", found: expect.stringContaining("unverified key") },
  },
  {
    what: "the seal of a bid taken out, no key given to the audit",
    bytes: unsealed,
    asked: false,
    verdict: "out of reach",
    why: "a bid need not be sealed: who expects a seal gives the office's key",
  },
];
