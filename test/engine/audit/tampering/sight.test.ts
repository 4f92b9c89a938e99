import { expect, test } from "vitest";
import { pageModel } from "../../../support/fence-page.js";
import { Tampered } from "../../../support/tamper.js";
import { typedOver } from "../../../support/typed-over.js";
import { sightCases } from "./cases/sight.js";
import { auditOf, holds, newBook } from "./run.js";

test.each(sightCases)("$verdict: $what", holds);

/** Of the rows that are too low: where, and how grave it is. */
async function lowRows(bytes: Uint8Array): Promise<string[]> {
  const { findings } = await auditOf(bytes);
  return findings
    .filter(({ code, found }) => code === "look" && found.startsWith("a row"))
    .map(({ grade, where }) => `${grade}: ${where}`);
}

const longer = {
  customer: "A customer whose name takes more lines than it had when it was written",
};
const line = pageModel.byId.get("customer")?.line;

test("a row that a longer text has outgrown is no fault, and one squeezed under its own text is", async () => {
  const typed = typedOver(newBook().bytes(), pageModel, longer);
  expect(await lowRows(typed)).toEqual([`to know: Site!${line}:${line}`]);
  const row = new RegExp(`(<row r="${line}"[^>]*? ht=")[^"]*"`);
  const squeezed = new Tampered(typed, pageModel).sheet("Site", (xml) => xml.replace(row, '$14"'));
  expect(await lowRows(squeezed.bytes())).toEqual([`doubtful: Site!${line}:${line}`]);
});
