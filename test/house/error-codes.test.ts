import { expect, test } from "vitest";
import { findingCodes } from "../../engine/audit/finding-codes.js";
import { run } from "../../engine/cli/run.js";
import { errorCodes, errorCodesByRoom } from "../../engine/error-codes.js";
import { templates } from "../../sheets/templates/index.js";
import { expectGolden, markdownTable } from "../support/golden.js";
import { sourcesIn, textOf } from "./imports.js";

const list = "engine/error-codes.ts";
const sources = sourcesIn(["engine", "sheets"])
  .filter((file) => file !== list)
  .map(textOf);

test("every code that is listed is told somewhere", () => {
  const idle = Object.keys(errorCodes).filter(
    (code) => !sources.some((text) => text.includes(`"${code}"`) || text.includes(`\`${code}: `)),
  );
  expect(idle).toEqual([]);
});

test("every sort of finding that is listed is found somewhere", () => {
  const audit = sourcesIn(["engine/audit", "engine/take"]).filter(
    (file) => !/finding-codes/.test(file),
  );
  const texts = audit.map(textOf);
  const idle = Object.keys(findingCodes).filter(
    (code) => !texts.some((text) => text.includes(`"${code}"`)),
  );
  expect(idle).toEqual([]);
});

// the compiler takes no other code for an error; what is told as plain text is found here
test("every code that is told is listed", () => {
  const told = sources.flatMap((text) =>
    [...text.matchAll(/Error\(\s*"([a-z]+(?:-[a-z]+)*)"|line: "error"[^}]*code: "([a-z-]+)"/g)].map(
      ([, code, ofLine]) => code ?? ofLine ?? "",
    ),
  );
  expect(told.length).toBeGreaterThan(90);
  expect(told.filter((code) => !Object.hasOwn(errorCodes, code))).toEqual([]);
});

test("a code stands in one room, and says what it means and what to do in whole sentences", () => {
  const rooms = Object.values(errorCodesByRoom).flatMap((room) => Object.entries(room));
  expect(rooms.map(([code]) => code).sort()).toEqual(Object.keys(errorCodes).sort());
  const short = rooms.filter(
    ([, { means, todo }]) => ![means, todo].every((one) => /\.$/.test(one)),
  );
  expect(short).toEqual([]);
});

test("errors.md lists every code, word for word", () => {
  const rooms = Object.entries(errorCodesByRoom).map(([room, codes]) => {
    const rows = Object.entries(codes).map(([code, { means, todo }]) => [
      `\`${code}\``,
      means,
      todo,
    ]);
    return `## ${room}\n\n${markdownTable(["Code", "Means", "To do"], rows)}\n`;
  });
  expectGolden(
    "engine/api/errors.md",
    `# Error codes

Made from \`${list}\` by a test. An error is told on standard error as \`code: sentence\`; the sentence names file, cell, value
and rule. With \`--json\` the same stands on standard output as \`{"error": {"code", "message", "todo"}}\`. Who imports the
package finds the code in \`RillbookError.code\`. Codes are stable: one is taken away or changes its sense with a major version only.

${rooms.join("\n")}
## What an audit finds

Findings are no errors: \`audit\` ends with status 1 where there are any but what is only to know. Each says what was found, what was expected, and what to do.

${markdownTable(
  ["Code", "Means"],
  Object.entries(findingCodes).map(([code, means]) => [`\`${code}\``, means]),
)}
`,
  );
});

test.each([
  ["a file that is not there", ["show", "no-such.json", "--json"], "file-unreadable", 2],
  ["an option that there is not", ["show", "job.json", "--no-such", "--json"], "usage", 2],
])("with --json, %s is told with its code", async (_, args, code, status) => {
  let [out, err] = ["", ""];
  const voices = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
  };
  expect(await run(args, templates, voices)).toBe(status);
  expect(JSON.parse(out).error).toMatchObject({ code, todo: expect.stringMatching(/\.$/) });
  expect(err).not.toBe("");
});
