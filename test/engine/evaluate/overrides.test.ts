import { DetailedCellError, HyperFormula, type RawCellContent } from "hyperformula";
import { expect, test } from "vitest";
import { judgeOptions, overrides, registerOverrides } from "../../../engine/evaluate/overrides.js";
import { CellError, type ErrorCode, type Value } from "../../../engine/formula/value.js";
import { expectGolden, markdownTable } from "../../support/golden.js";
import { agree, shown } from "./agree.js";
import { caseFormula, caseLabel } from "./case-formula.js";
import { cases, type FunctionCase } from "./cases.js";

// A process of its own: hyperformula is first asked without our functions, which go in for a whole process.

/** Text behind a quote, or hyperformula reads dates and numbers out of it. */
function content(value: Value | undefined): RawCellContent {
  if (value instanceof CellError) return `=${value.code}`;
  return typeof value === "string" ? `'${value}` : (value ?? null);
}

function sheetOf(one: FunctionCase): RawCellContent[][] {
  const { formula, columns } = caseFormula(one);
  const height = Math.max(1, ...columns.map((column) => column.length));
  return Array.from({ length: height }, (_, row) => [
    row === 0 ? `=${formula}` : null,
    null,
    ...columns.map((column) => content(column[row])),
  ]);
}

/** All cases in hyperformula, each on a sheet of its own. */
function calculateAll(): Value[] {
  const sheets = Object.fromEntries(cases.map((one, i) => [`Case${i}`, sheetOf(one)]));
  const engine = HyperFormula.buildFromSheets(sheets, judgeOptions);
  const values = cases.map((_, i): Value => {
    const sheet = engine.getSheetId(`Case${i}`) as number;
    const value = engine.getCellValue({ sheet, row: 0, col: 0 });
    return value instanceof DetailedCellError ? new CellError(value.value as ErrorCode) : value;
  });
  engine.destroy();
  return values;
}

/** Finer than usual: hyperformula's PI is off in the 16th digit. */
const lastBit = 3e-16;

const alone = calculateAll();
registerOverrides();
registerOverrides();
const together = calculateAll();

test.each(cases.map((one, i) => [caseLabel(one), one, i] as const))("%s", (_, one, i) => {
  const expected = one.judge ?? one.expected;
  const actual = together[i] as Value;
  expect(agree(actual, expected), `${shown(actual)}, not ${shown(expected)}`).toBe(true);
});

// CHOOSE is looked at in whole formulas, since it leaves arguments alone
test.each(Object.keys(overrides).filter((name) => name !== "CHOOSE"))(
  "%s is overridden because hyperformula's own fails a case",
  (name) => {
    const failing = cases.filter(
      (one, i) => one.name === name && !agree(alone[i] as Value, one.expected, lastBit),
    );
    expect(failing.map(caseLabel)).not.toEqual([]);
  },
);

const code = (value: Value | undefined): string => `\`${shown(value as Value)}\``;

/** The cases in which a program gives something else, one line each. */
const elsewhere = (["judge", "office", "gnumeric"] as const).map((program) =>
  cases.flatMap((one) =>
    one[program] === undefined
      ? []
      : [[`\`${caseLabel(one)}\``, code(one.expected), code(one[program]), one.note ?? ""]],
  ),
);

const overridden = cases.flatMap((one, i) =>
  Object.hasOwn(overrides, one.name) && !agree(alone[i] as Value, one.expected, lastBit)
    ? [[`\`${caseLabel(one)}\``, code(one.expected), code(alone[i]), one.source]]
    : [],
);

test("differences.md lists where programs differ", () => {
  const [judge = [], office = [], gnumeric = []] = elsewhere;
  for (const list of [office, gnumeric, overridden]) expect(list.length).toBeGreaterThan(10);
  const heads = ["Call", "Here", "There", "Note"];
  expectGolden(
    "engine/api/differences.md",
    `# Where programs differ

Made from the cases in \`test/engine/evaluate/cases\` by a test. ${cases.length} calls of all functions that templates may use are
calculated by both evaluators, LibreOffice and Gnumeric in the tests; those not listed agree in all four. Numbers agree
within 1e-13 of their size, and whole bids within 1e-9 (\`test/office\`). No other spreadsheet program was at hand.

"Here" is what the fast evaluator gives, and what a template may count on; templates keep clear of what differs, or round first.

## LibreOffice

${markdownTable(heads, office)}

## Gnumeric

${markdownTable(heads, gnumeric)}

## hyperformula, with our functions in

${markdownTable(heads, judge)}

## hyperformula by itself

Each of these functions is put in place of hyperformula's own: ${Object.keys(overrides)
      .sort()
      .map((name) => `\`${name}\``)
      .join(", ")}. Its own gives:

${markdownTable(["Call", "Here", "There", "Source"], overridden)}
`,
  );
});
