import { expect } from "vitest";
import { type Audit, auditWorkbook } from "../../../../engine/audit/audit.js";
import type { Finding } from "../../../../engine/audit/finding.js";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { pageFence, pageModel, pageWorkbook } from "../../../support/fence-page.js";
import { Tampered } from "../../../support/tamper.js";

/** One way to change a workbook behind the program's back, and what an audit is to say of it. */
export interface Case {
  readonly what: string;
  readonly edit: (book: Tampered) => unknown;
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
  readonly why?: string;
}

const clean = await pageWorkbook();

export const newBook = (): Tampered => new Tampered(clean, pageModel);

export const auditOf = (bytes: Uint8Array): Promise<Audit> =>
  auditWorkbook(readWorkbook(bytes, { look: true }), [pageFence]);

const said = ({ findings }: Audit) => findings.map(({ code, where }) => `${code} ${where}`);
const untouched = said(await auditOf(clean));

/** Tampers, audits, and holds what is found against the case. */
export async function holds({ edit, verdict, finds }: Case): Promise<void> {
  const book = newBook();
  edit(book);
  const audit = await auditOf(book.bytes());
  if (finds !== undefined) {
    expect(audit.findings).toContainEqual(expect.objectContaining(finds));
  }
  if (verdict === "found") {
    expect(audit.clean).toBe(false);
    expect(finds).toBeDefined();
    const { grade } = audit.findings.find((one) => matches(one, finds ?? {})) as Finding;
    expect(grade).not.toBe("to know");
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
