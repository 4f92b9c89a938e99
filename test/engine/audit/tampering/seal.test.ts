import { test } from "vitest";
import { officeKey, sealCases } from "./cases/seal.js";
import { auditOf, told } from "./run.js";

test.each(sealCases)("$verdict: $what, key given: $asked", async (one) => {
  told(await auditOf(await one.bytes(), one.asked ? officeKey : undefined), one);
});
