import { expect } from "vitest";
import { type Audit, auditWorkbook } from "../../../../engine/audit/audit.js";
import type { Finding } from "../../../../engine/audit/finding.js";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { pageFence, pageModel, pageWorkbook } from "../../../support/fence-page.js";
import { Tampered } from "../../../support/tamper.js";

/** What an audit is to say of something that was done to a workbook. */
export interface Told {
  readonly what: string;
  /**
   * `found`: a finding that a person must look at. `note`: told as something to know. `silent`: nothing that
   * anybody sees is changed, and nothing is said. `out of reach`: not told, and `why`.
   */
  readonly verdict: "found" | "note" | "silent" | "out of reach";
  /** It changes a figure that is printed, shown or calculated. */
  readonly figure?: true;
  /** An office may do it, or a program by saving: it must not be accused. */
  readonly harmless?: true;
  readonly finds?: Partial<Finding>;
  /** One act, one finding: nothing else is found above "to know". */
  readonly alone?: true;
  readonly why?: string;
}

/** One way to change a workbook behind the program's back. */
export interface Case extends Told {
  readonly edit: (book: Tampered) => unknown;
}

const clean = await pageWorkbook();

export const newBook = (): Tampered => new Tampered(clean, pageModel);

export const auditOf = (bytes: Uint8Array, key?: string): Promise<Audit> =>
  auditWorkbook(readWorkbook(bytes, { look: true }), [pageFence], { key });

const said = ({ findings }: Audit) => findings.map(({ code, where }) => `${code} ${where}`);
const untouched = said(await auditOf(clean));

/** Tampers, audits, and holds what is found against the case. */
export async function holds(one: Case): Promise<void> {
  const book = newBook();
  one.edit(book);
  told(await auditOf(book.bytes()), one);
}

/** Holds what an audit found against what it is to find. */
export function told(audit: Audit, { verdict, finds, alone }: Told): void {
  if (finds !== undefined) {
    expect(audit.findings).toContainEqual(expect.objectContaining(finds));
  }
  if (verdict === "found") {
    expect(audit.clean).toBe(false);
    expect(finds).toBeDefined();
    const { grade } = audit.findings.find((one) => matches(one, finds ?? {})) as Finding;
    expect(grade).not.toBe("to know");
    const grave = audit.findings.filter((one) => one.grade !== "to know");
    if (alone) expect(grave).toHaveLength(1);
    return;
  }
  expect(audit.findings.filter(({ grade }) => grade !== "to know")).toEqual([]);
  if (verdict !== "note") expect(said(audit)).toEqual(untouched);
  else expect(finds).toBeDefined();
}

const matches = (finding: Finding, wanted: Partial<Finding>): boolean =>
  Object.entries(wanted).every(([key, value]) => {
    const own = finding[key as keyof Finding];
    return value instanceof Object && "asymmetricMatch" in value
      ? (value as { asymmetricMatch(other: unknown): boolean }).asymmetricMatch(own)
      : own === value;
  });
