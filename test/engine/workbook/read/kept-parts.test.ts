import fc from "fast-check";
import { expect, test } from "vitest";
import { KeptParts } from "../../../../engine/workbook/read/kept-parts.js";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { type Plan, parts, zipped } from "./build.js";

/** What is read of a workbook, or the refusal. */
function outcome(plan: Plan, kept?: KeptParts, markup?: number): unknown {
  try {
    const { sheets, names, common, properties, date1904 } = readWorkbook(zipped(parts(plan)), {
      formulas: false,
      ...(kept === undefined ? {} : { kept }),
      ...(markup === undefined ? {} : { limits: { markup } }),
    });
    const sorted = (all: typeof names) => all.map((one) => JSON.stringify(one)).sort();
    return {
      sheets: sheets.map(({ cells, validated, ...rest }) => ({
        ...rest,
        cells: [...cells],
        validated: [...validated],
      })),
      names: sorted(names),
      common: sorted(common),
      properties,
      date1904,
    };
  } catch (error) {
    const { code, message } = error as Error & { code?: string };
    return `${code}: ${message}`;
  }
}

/** The fewest elements and attributes with which it is read. */
function markupOf(plan: Plan, kept?: () => KeptParts): number {
  let [fits, not] = [100_000, 0];
  while (fits - not > 1) {
    const middle = Math.floor((fits + not) / 2);
    if (typeof outcome(plan, kept?.(), middle) === "string") not = middle;
    else fits = middle;
  }
  return fits;
}

const name = (of: string, at: string, more = "") =>
  `<definedName name="${of}"${more}>${at}</definedName>`;
const cells = '<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>';
const others = '<sheetData><row r="2" hidden="1"><c r="B2" t="s"><v>1</v></c></row></sheetData>';
const rules = (at: string) =>
  `<dataValidations count="1"><dataValidation sqref="${at}"/></dataValidations>`;
const page = (footer: string, breaks = "") =>
  `<headerFooter><oddFooter>${footer}</oddFooter></headerFooter>${breaks}`;
const breaks = (...rows: number[]) =>
  `<rowBreaks count="${rows.length}" manualBreakCount="${rows.length}">${rows.map((row) => `<brk id="${row}" max="16383" man="1"/>`).join("")}</rowBreaks>`;
const hidden = '<cols><col min="2" max="3" hidden="1"/></cols>';
const strings = '<si><t>one</t></si><si><t xml:space="preserve"> é &amp; </t></si><si><t/></si>';
const lift = name("lift", "Pump!$A$1");
const printed = (last: number) =>
  name("_xlnm.Print_Area", `Pump!$A$1:$C$${last}`, ' localSheetId="0"');
const plan = (names: string, inside = cells, more: Plan = {}): Plan => ({
  ...{ names, strings },
  sheets: { Pump: inside, Basin: cells },
  ...more,
});

test.each<[string, readonly Plan[]]>([
  ["the same again", [plan(lift), plan(lift), plan(lift, others)]],
  [
    "other areas to print",
    [plan(lift + printed(4)), plan(lift + printed(9)), plan(printed(9) + lift), plan(lift)],
  ],
  ["another place for a name", [plan(lift), plan(name("lift", "Basin!$A$1")), plan(lift)]],
  [
    "sheets by other names",
    [plan(lift), plan(lift, cells, { sheets: { Pumps: cells, Pump: others } }), plan(lift)],
  ],
  [
    "rules and hidden columns",
    [
      plan(lift, hidden + cells + rules("A1:A4")),
      plan(lift, hidden + others + rules("A1:A4")),
      plan(lift, cells + rules("A1:A5")),
    ],
  ],
  [
    "footers and where pages end",
    [
      plan(lift, cells + rules("A1") + page("Job 1 &amp;P")),
      plan(lift, cells + rules("A1") + page("Job é", breaks(4, 90))),
      plan(lift, cells + rules("A1") + page("", breaks(7))),
      plan(lift, cells + rules("A1") + page("Job", '<rowBreaks><brk id="1"/></rowBreaks>')),
    ],
  ],
  [
    "more templates than are kept",
    [..."abcde", ..."edcba"].map((one) => plan(name(one, "Pump!$A$1"), cells + rules(`${one}1`))),
  ],
  [
    "names of kinds",
    [
      plan(
        name("a", "1") + name("b", "Pump!$A$1", ' hidden="1"') + name("c", "", ' comment="&#65;"'),
      ),
      plan(name("d", "&quot; localSheetId=&quot;") + name("e_x0041_", "Pump!$A$1:$B$2")),
    ],
  ],
])("read after others as by itself: %s", (_, plans) => {
  const kept = new KeptParts();
  for (const one of plans) {
    const alone = outcome(one);
    expect(typeof alone).toBe("object");
    expect(outcome(one, kept)).toEqual(alone);
    expect(outcome(one, kept)).toEqual(alone);
  }
});

test.each<[string, string | undefined, Plan]>([
  ["a name twice", "workbook-damaged", plan(lift + lift)],
  [
    "a name of a sheet twice",
    "workbook-damaged",
    plan(name("a", "1", ' localSheetId="0"').repeat(2)),
  ],
  ["a sheet that is not there", "workbook-damaged", plan(name("a", "1", ' localSheetId="7"'))],
  ["no name", "workbook-damaged", plan("<definedName>1</definedName>")],
  [
    "an attribute twice",
    "workbook-damaged",
    plan('<definedName name="a" name="a">1</definedName>'),
  ],
  ["a name that does not end", "workbook-damaged", plan('<definedName name="a" localSheetId="0">')],
  ["an entity of its own", "workbook-damaged", plan(name("a", "&own;"))],
  ["a footer with one", "workbook-damaged", plan(lift, cells + page("&own;"))],
  ["a text that is not there", "workbook-cell", plan(lift, cells, { strings: "" })],
  ["a definition that is too long", "workbook-damaged", plan(name("a", "1".repeat(16_385)))],
])("refused in the same words after others: %s", (_, code, one) => {
  const kept = new KeptParts();
  outcome(plan(lift, others), kept);
  const spoilt = code === "workbook-cell" ? { ...one, sheets: { Pump: others } } : one;
  const alone = outcome(spoilt);
  expect(alone).toMatch(new RegExp(`^${code}: `));
  expect(outcome(spoilt, kept)).toBe(alone);
  expect(outcome(spoilt, kept)).toBe(alone);
});

test("what was read before counts as markup all the same", () => {
  const one = plan(lift + printed(4), hidden + cells + rules("A1") + page("Job 1", breaks(3, 8)));
  const kept = new KeptParts();
  outcome(one, kept);
  const alone = markupOf(one);
  expect(markupOf(one, () => kept)).toBe(alone);
  expect(markupOf(one, () => new KeptParts())).toBe(alone);
});

test("what strange workbooks bring is dropped again, the oldest first, and one too large at once", () => {
  const kept = new KeptParts();
  const text = "x".repeat(1e6);
  for (let i = 0; i < 40; i++) kept.keep(`part ${i}`, text, { i });
  expect(kept.size).toBeLessThanOrEqual(16e6);
  expect(kept.find("part 23", text)).toBeUndefined();
  expect(kept.find("part 24", text)).toEqual({ i: 24 });
  expect(kept.find("part 39", text)).toEqual({ i: 39 });
  for (const one of "abcd") kept.keep("part 39", one, { one });
  expect([..."abcd"].map((one) => kept.find("part 39", one) !== undefined)).toEqual([
    ...[false, true, true, true],
  ]);
  kept.keep("large", "y".repeat(17e6), {});
  expect(kept.size).toBe(0);
});

test("workbooks with the same names have one list of them", () => {
  const kept = new KeptParts();
  const [first, second, third] = [printed(4), printed(5), name("other", "1")].map(
    (more) => readWorkbook(zipped(parts(plan(lift + more))), { formulas: false, kept }).common,
  );
  expect(second).toBe(first);
  expect(third).not.toBe(first);
});

const told = (found: unknown) =>
  typeof found === "string" ? found.replace(/name \S+ comes twice/, "a name comes twice") : found;

test("whatever names, rules and pages are made of, all is read after others as by itself", () => {
  const names = [
    ...[lift, printed(4), printed(5), name("a", "Basin!$A$1"), name("a", "1", ' localSheetId="1"')],
    ...[name("b", "x", ' localSheetId="1" hidden="true"'), "<!-- -->", " ", "</definedNames>"],
    ...['<definedName name="c">', "</definedName>", ' localSheetId="0"', "<definedName ", ">"],
  ];
  const around = [
    ...[rules("A1"), rules("B2:B9"), hidden, page("a"), page("a", breaks(1)), page("&own;")],
    ...[
      page("<b/>"),
      "<oddFooter>",
      "a",
      "</oddFooter>",
      "<rowBreaks>",
      "</rowBreaks>",
      "<x a='1'/>",
    ],
  ];
  const some = (from: readonly string[]) =>
    fc.array(fc.constantFrom(...from), { maxLength: 4 }).map((all) => all.join(""));
  const plans = fc.array(
    fc.record({ names: some(names), around: some(around), inside: fc.constantFrom(cells, others) }),
    { minLength: 2, maxLength: 4 },
  );
  let read = 0;
  fc.assert(
    fc.property(plans, (all) => {
      const kept = new KeptParts();
      for (const { names, around, inside } of all) {
        const one = plan(names, inside + around);
        const alone = outcome(one);
        if (typeof alone === "object") read += 1;
        // of several names that come twice another one may be told
        expect(told(outcome(one, kept))).toEqual(told(alone));
      }
    }),
    { seed: 20261, numRuns: 400 },
  );
  expect(read).toBeGreaterThan(200);
});
