import { expect, test } from "vitest";
import * as face from "../../engine/index.js";
import { type Declared, declaredNames } from "../support/declared.js";
import { expectGolden, markdownTable } from "../support/golden.js";
import { runExample } from "../support/run-example.js";

const all = declaredNames();

/** The chapters, in the order in which one needs them, by the files whose names they tell. */
const chapters: readonly (readonly [heading: string, files: RegExp])[] = [
  ["Declare a template", /^template\/(template|extend|declare|declare-cells|chart|panel)$/],
  ["Named formulas", /^formula\/named-formula$/],
  ["Quantities and units", /^units\//],
  ["Compile", /^(api\/compile|template\/(model|template-error))$/],
  ["Open a job", /^(api\/jobs|job\/|book\/|template\/book-layout)/],
  ["Calculate", /^(api\/bid|formula\/value)$/],
  ["Workbooks", /^(api\/workbooks|workbook\/|audit\/)/],
  ["Where a figure comes from", /^(api\/trace|trace\/)/],
  ["Many jobs", /^(api\/rerun|rerun\/)/],
  ["Templates of one's own on the command line", /^api\/command$/],
  ["Errors", /^(errors|error-codes)$/],
];

test("every name that can be imported has a docstring and a chapter", () => {
  expect(all.filter(({ says }) => says === "").map(({ name }) => name)).toEqual([]);
  const homes = all.map(({ name, from }) => [
    name,
    chapters.filter(([, of]) => of.test(from)).length,
  ]);
  expect(homes.filter(([, chapters]) => chapters !== 1)).toEqual([]);
  const values = all.filter(({ isType }) => !isType).map(({ name }) => name);
  expect(values.sort()).toEqual(Object.keys(face).sort());
});

const examples = all.flatMap(({ name, example }) =>
  example === undefined ? [] : [[name, example]],
);

test("there are examples", () => expect(examples.length).toBeGreaterThan(4));

test.each(examples)("the example of %s runs", async (_, example) => {
  await runExample(example as string);
});

/** What one needs before all else, in this order; the others follow by name. */
const first = [
  ...["template", "extend", "sheet", "lines", "table", "input", "calc", "check", "published"],
  ...["formula", "quantities", "newJob", "openJob", "calculate", "writeWorkbook", "RillbookError"],
];

const rank = ({ name }: Declared): number =>
  first.includes(name) ? first.indexOf(name) : first.length;

/** Parameters as a list; lines of a paragraph as one. */
const prose = (says: string): string =>
  says
    .replace(/^@param (\S+) /gm, "\n- `$1`: ")
    .replace(/([^\n])\n(?![\n-])/g, "$1 ")
    .replace(/\n{2,}(?=- )/g, "\n\n")
    .replace(/^(- .*)\n\n(?=- )/gm, "$1\n");

const entry = ({ name, says, code, example }: Declared): string =>
  [
    `### ${name}`,
    // the codes have a document of their own, and the quantities a table
    ...(/^const (errorCodes|findingCodes|quantities)\b/.test(code)
      ? []
      : [`\`\`\`ts\n${code}\n\`\`\``]),
    prose(says),
    ...(example === undefined ? [] : [`\`\`\`js\n${example}\n\`\`\``]),
    ...(name === "quantities" ? [quantityTable()] : []),
  ].join("\n\n");

const quantityTable = (): string =>
  markdownTable(
    ["Name", "Is", "US customary", "SI", "Decimals"],
    Object.entries(face.quantities).map(([name, { name: is, units, decimals }]) => [
      `\`${name}\``,
      is,
      units.us.name,
      units.si.name,
      decimals.us === decimals.si ? `${decimals.us}` : `${decimals.us}; SI ${decimals.si}`,
    ]),
  );

const anchor = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\w -]/g, "")
    .replaceAll(" ", "-");

test("reference.md is what the docstrings say, word for word", () => {
  const parts = chapters.map(([heading, files]) => {
    const own = all
      .filter(({ from }) => files.test(from))
      .sort((a, b) => rank(a) - rank(b) || a.name.localeCompare(b.name));
    const sorted = [...own.filter(({ isType }) => !isType), ...own.filter(({ isType }) => isType)];
    return `## ${heading}\n\n${sorted.map(entry).join("\n\n")}\n`;
  });
  const list = chapters.map(([heading]) => `- [${heading}](#${anchor(heading)})`).join("\n");
  expectGolden(
    "engine/api/reference.md",
    `# What rillbook promises to whoever imports it

Made from the docstrings by a test, which also runs every example. \`import … from "rillbook"\` gives these names and no others;
\`import { templates } from "rillbook/sheets"\` the templates that come along. All that declares is done at once; all that
works on a template is a promise, since it loads what it needs when it is first called. [Your first template](tutorial.md) goes the
whole way; [error codes](errors.md) and [where programs differ](differences.md) have documents of their own.

**What is promised.** Versions are semantic: with a major version of 0, a minor version may break what follows, a patch does not. Promised are the names,
parameters and results below, the error codes, the commands and options of \`--help\` with their exit status, the format of job records (\`"rillbook": 1\`),
and that a workbook of a released template version can be audited and rerun. Not promised: files within \`dist\`, members of types that are not told here, the words of
sentences, the looks of a workbook, the layout of sheets (cells are found by name), and how long anything takes.

${list}

${parts.join("\n")}`,
  );
});
