import { expect, test } from "vitest";
import { officeKey, sealCases } from "./cases/seal.js";
import { auditOf, told } from "./run.js";

test.each(sealCases)("$verdict: $what, key given: $asked", async (one) => {
  const audit = await auditOf(await one.bytes(), one.asked ? officeKey : undefined);
  told(audit, one);
  if (one.also !== undefined) {
    expect(audit.findings).toContainEqual(expect.objectContaining(one.also));
  }
});
