import exceljs from "exceljs";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, describe, expect, it, vi } from "vitest";
import { addressOf } from "../../../../engine/address.js";
import { valuesOf } from "../../../../engine/book/values.js";
import { calculate } from "../../../../engine/evaluate/calculate.js";
import { CellError, type Value } from "../../../../engine/formula/value.js";
import { compile } from "../../../../engine/template/compile.js";
import * as t from "../../../../engine/template/index.js";
import type { Cell } from "../../../../engine/template/model.js";
import { xlsxFormula } from "../../../../engine/template/printed.js";
import type { CellContent } from "../../../../engine/workbook/read/content.js";
import { cellAt, columnAt, nameAmong } from "../../../../engine/workbook/read/lookup.js";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../../engine/workbook/write/write.js";
import { tiny } from "../../../support/tiny.js";
import { toy, toyBook, toyIdentity, toyJob } from "../../../support/toy.js";

/** Text that another program might take for a formula, a number, a date or markup. */
const awkward = "=1+1";
const job = {
  ...toyJob,
  inputs: {
    ...toyJob.inputs,
    customer: awkward,
    remark: "<b>&amp; \"quoted\" 'text'",
    beds: [
      { name: "+x", wide: 36, item: "OAK" },
      { name: "@y", wide: 18, soil: "sand" },
      { name: "-z", wide: 6, item: "GOLD" }, // the book has no gold: an error that stays in the workbook
    ],
  },
};
const model = compile(toy, "us");
const values = calculate(model, valuesOf(model, job, toyBook));
const bytes = await writeWorkbook(model, values, toyIdentity);
const content = readWorkbook(bytes);
const styled = new exceljs.Workbook();
await styled.xlsx.load(bytes as unknown as ArrayBuffer);

const addressIn = ({ column, line }: Cell) => addressOf(column, line);
const written = (cell: Cell): CellContent =>
  content.sheets.find(({ name }) => name === cell.sheet)?.cells.get(addressIn(cell)) ?? {
    value: null,
  };
const styledCell = (cell: Cell) => styled.getWorksheet(cell.sheet)?.getCell(addressIn(cell));
const asWritten = (value: Value) =>
  value instanceof CellError ? { error: value.code } : value === null ? null : value;

// "Dig without protection: yes" would say the opposite of what the check found
describe("a check, named after the fault", () => {
  it("shows ok or fails, and its label asks for it", () => {
    const checks = model.cells.filter(({ declaration }) => declaration.kind === "check");
    expect(checks.length).toBeGreaterThan(1);
    for (const cell of checks) expect(styledCell(cell)?.numFmt, cell.id).toBe('"ok";"ok";"fails"');
    const labels = new Set(checks.map(({ declaration }) => `${declaration.label} (ok?)`));
    const texts = new Set(
      content.sheets.flatMap(({ cells }) => [...cells.values()].map(({ value }) => value)),
    );
    expect([...labels].filter((label) => !texts.has(label))).toEqual([]);
  });
});

describe("every cell of the model", () => {
  it("is written as what it is: a formula with its value, or a given value", () => {
    let formulas = 0;
    for (const cell of model.cells) {
      const { value, formula } = written(cell);
      const expected = asWritten(values[cell.index] as Value);
      if (cell.native === undefined) {
        expect(formula, cell.id).toBeUndefined();
      } else {
        formulas += 1;
        expect(formula, cell.id).toBe(xlsxFormula(model, cell));
        expect(value, cell.id).not.toBe(null);
      }
      expect(value, cell.id).toEqual(expected);
    }
    expect(formulas).toBeGreaterThan(80);
  });

  it("has its unlocked style only where it is an input", () => {
    for (const cell of model.cells) {
      const locked = styledCell(cell)?.protection?.locked ?? true;
      expect(locked, cell.id).toBe(cell.declaration.kind !== "input");
    }
  });
});

describe("the whole workbook", () => {
  it("has no number but inputs, prices, published figures and the trail's record", () => {
    const given = new Set(
      model.cells
        .filter(({ declaration: { kind } }) => ["input", "book", "published"].includes(kind))
        .map((cell) => `${cell.sheet}!${addressIn(cell)}`),
    );
    const constants: string[] = [];
    let looked = 0;
    for (const { name, cells } of content.sheets) {
      // the trail records what the inputs were: it must not follow them
      if (name === "Trail" || name === "As written") continue;
      for (const [address, { value, formula }] of cells) {
        looked += 1;
        const isFigure = typeof value === "number" || typeof value === "boolean";
        if (isFigure && formula === undefined && !given.has(`${name}!${address}`)) {
          constants.push(`${name}!${address} = ${value}`);
        }
      }
    }
    expect(constants).toEqual([]);
    expect(looked).toBeGreaterThan(300);
  });

  it("has a cached value beside every formula", () => {
    let formulas = 0;
    for (const [name, part] of Object.entries(unzipSync(bytes))) {
      if (!name.startsWith("xl/worksheets/sheet")) continue;
      for (const [cell] of strFromU8(part).matchAll(/<c [^>]*>.*?<\/c>/gs)) {
        if (!cell.includes("<f")) continue;
        formulas += 1;
        expect(cell).toMatch(/<\/f><v>|<\/f><v\/>/);
      }
    }
    expect(formulas).toBeGreaterThan(100);
  });

  it("has unlocked cells only among the inputs, and every sheet protected", () => {
    const inputs = model.cells.filter(({ declaration }) => declaration.kind === "input");
    let unlocked = 0;
    for (const sheet of styled.worksheets) {
      expect(
        (sheet as unknown as { sheetProtection: unknown }).sheetProtection,
        sheet.name,
      ).toBeTruthy();
      sheet.eachRow({ includeEmpty: true }, (row) => {
        row.eachCell({ includeEmpty: true }, (cell) => {
          // the cells that a merge covers share the style of its first
          const covered = cell.isMerged && cell.master.address !== cell.address;
          if (cell.protection?.locked === false && !covered) unlocked += 1;
        });
      });
    }
    expect(unlocked).toBe(inputs.length);
  });

  it("lists its sheets in the order of the job", () => {
    expect(content.sheets.map(({ name }) => name)).toEqual([
      "Summary",
      ...toy.sheets.map(({ name }) => name),
      "Workings",
      "Checks",
      "Trail",
      "Names",
      "As written",
    ]);
  });

  it("is recalculated by programs that look at the flag", () => {
    expect(strFromU8(unzipSync(bytes)["xl/workbook.xml"] as Uint8Array)).toContain(
      'fullCalcOnLoad="1"',
    );
  });
});

describe("text", () => {
  it.each([
    ["customer", awkward],
    ["remark", "<b>&amp; \"quoted\" 'text'"],
    ["beds.name[1]", "+x"],
    ["beds.name[2]", "@y"],
    ["beds.name[3]", "-z"],
  ])("that looks like something else stays text: %s", (id, text) => {
    const cell = model.byId.get(id) as Cell;
    expect(written(cell)).toEqual({ value: text });
    // a text format: typing over it keeps it text too
    expect(styledCell(cell)?.numFmt).toBe("@");
  });

  it("without meaning in XML is left out, and the file can be read", async () => {
    const strange = "a\u0000b\u0001c\u000bd\uFFFEe";
    const index = model.byId.get("remark")?.index as number;
    const given = values.map((value, i) => (i === index ? strange : value));
    const other = await writeWorkbook(model, given, {
      ...toyIdentity,
      job: strange,
      about: strange,
    });
    const back = readWorkbook(other);
    expect(back.properties.custom.get("rillbook job")).toBe("abcde");
    expect(cellAt(back, "remark").cell.value).toBe("abcde");
  });
});

describe("errors", () => {
  it("are written as errors", () => {
    expect(written(model.byId.get("bed_prices.edging[3]") as Cell).value).toEqual({
      error: "#N/A",
    });
    expect(written(model.byId.get("edging_total") as Cell).value).toEqual({ error: "#N/A" });
  });

  it("never as numbers that a file cannot hold", async () => {
    const index = model.byId.get("soil_total")?.index;
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY]) {
      const broken = values.map((value, i) => (i === index ? bad : value));
      await expect(writeWorkbook(model, broken, toyIdentity)).rejects.toThrow(
        /not a number that a file/,
      );
    }
  });
});

describe("defined names", () => {
  it("point to their cells: every single cell and every column, and nothing else", () => {
    const expected: string[] = [];
    for (const cell of model.cells.filter(({ implied, table }) => !implied && !table)) {
      expected.push(cell.name);
      const found = cellAt(content, cell.name);
      expect([found.sheet, found.address], cell.name).toEqual([cell.sheet, addressIn(cell)]);
    }
    for (const { columns } of model.tables.values()) {
      for (const { name, cells } of columns.values()) {
        if (cells[0]?.implied) {
          expect(nameAmong(content.common, name)).toBeUndefined();
          continue;
        }
        expected.push(name);
        expect(columnAt(content, name).map(({ address }) => address)).toEqual(cells.map(addressIn));
      }
    }
    const own = content.names.filter(({ name }) => !name.startsWith("_xlnm"));
    expect(own.map(({ name }) => name).sort()).toEqual(expected.sort());
  });
});

describe("validation", () => {
  const rules: [input: string, rule: object][] = [
    ["plot", { type: "decimal", operator: "between", formulae: [1, 500], errorStyle: "stop" }],
    ["people", { type: "whole", formulae: [1, 9] }],
    ["spare", { type: "decimal", formulae: [0, 0.5], prompt: "0% to 50%." }],
    ["hose", { type: "decimal", formulae: [0, 1e12] }],
    ["paved", { type: "list", formulae: ['"TRUE,FALSE"'] }],
    ["finish", { type: "list", formulae: ['"rough,smooth"'] }],
    ["beds.soil[4]", { type: "list", formulae: ["soils.name"] }],
    [
      "beds.wide[1]",
      {
        type: "decimal",
        formulae: [1, 120],
        promptTitle: "Width",
        prompt: "Inside the boards. 1 to 120 in.",
        errorTitle: "Width",
        error: "This value does not fit. Rule: 1 to 120 in.",
        allowBlank: true,
      },
    ],
  ];
  it.each(rules)("%s", (id, rule) => {
    expect(styledCell(model.byId.get(id) as Cell)?.dataValidation).toMatchObject(rule);
  });

  it("stands at every input but free text, and nowhere else", () => {
    for (const cell of model.cells) {
      const { kind, quantity } = cell.declaration;
      const choices = cell.declaration.kind === "input" && cell.declaration.choices;
      const wanted = kind === "input" && (quantity.kind !== "text" || Boolean(choices));
      expect(styledCell(cell)?.dataValidation !== undefined, cell.id).toBe(wanted);
    }
  });

  it("has limits and words in SI where the model has", async () => {
    const si = compile(toy, "si");
    const metric = { ...job, units: "si" as const, inputs: { ...job.inputs, beds: [] } };
    const found = calculate(si, valuesOf(si, metric, toyBook));
    const workbook = new exceljs.Workbook();
    const identity = { ...toyIdentity, units: "si" as const };
    await workbook.xlsx.load((await writeWorkbook(si, found, identity)) as unknown as ArrayBuffer);
    const cell = workbook.getWorksheet("Site")?.getCell("B8");
    expect(cell?.dataValidation).toMatchObject({
      formulae: [25.4, 609.6],
      prompt: "25.4 to 609.6 mm.",
    });
    expect(workbook.getWorksheet("Site")?.getCell("C8").value).toBe("mm");
  });
});

describe("custom properties", () => {
  it("tell the job, the template and the office book", () => {
    const { custom } = content.properties;
    expect(Object.fromEntries(custom)).toMatchObject({
      "rillbook job": "T-1",
      "rillbook template": "toy",
      "rillbook version": "3",
      "rillbook units": "us",
      "rillbook office book": "Toy prices",
      "rillbook office book as of": "2026-05-01",
      "rillbook office book mark": "0".repeat(64),
    });
  });

  it("take any characters", async () => {
    const name = `R&D "1" <2> 'ü' ${"x".repeat(300)}`;
    const other = await writeWorkbook(model, values, { ...toyIdentity, job: name });
    expect(readWorkbook(other).properties.custom.get("rillbook job")).toBe(name);
    // headers and footers hold 255 characters
    for (const [part, xml] of Object.entries(unzipSync(other))) {
      const footer = /<oddFooter>(.*?)<\/oddFooter>/.exec(strFromU8(xml))?.[1];
      if (!part.startsWith("xl/worksheets/") || footer === undefined) continue;
      const text = footer
        .replaceAll("&lt;", "<")
        .replaceAll("&quot;", '"')
        .replaceAll("&amp;", "&");
      expect(text.length).toBeLessThanOrEqual(255);
      expect(text).toContain('R&&D "1"');
    }
  });
});

describe("the same job gives the same bytes", () => {
  afterAll(() => {
    vi.useRealTimers();
  });

  it("today, tomorrow and after another job", async () => {
    await writeWorkbook(
      model,
      [...values].reverse().map(() => null),
      toyIdentity,
    );
    vi.useFakeTimers({ toFake: ["Date"], now: new Date("2031-01-02T03:04:05Z") });
    const again = await writeWorkbook(model, values, toyIdentity);
    expect(Buffer.compare(Buffer.from(again), Buffer.from(bytes))).toBe(0);
  });

  it("and another job others", async () => {
    const other = await writeWorkbook(model, values, { ...toyIdentity, job: "T-2" });
    expect(Buffer.compare(Buffer.from(other), Buffer.from(bytes))).not.toBe(0);
  });
});

describe("the sheets around", () => {
  const textsOf = (sheet: string) =>
    [...(content.sheets.find(({ name }) => name === sheet)?.cells ?? [])].map(
      ([, { value }]) => value,
    );
  const formulasOf = (sheet: string) =>
    [...(content.sheets.find(({ name }) => name === sheet)?.cells ?? [])].flatMap(
      ([, { formula }]) => (formula === undefined ? [] : [formula]),
    );

  it("Start shows the headline by reference, and leads to each sheet", () => {
    expect(formulasOf("Summary")).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/=0,edging_total,"–"\)$/),
        expect.stringMatching(/=0,soil_total,"–"\)$/),
        "checks_failed",
        `HYPERLINK("#'Beds'!A1","Beds")`,
      ]),
    );
    expect(textsOf("Summary")).toContain("Toy prices, as of 2026-05-01");
  });

  it("Names has every name with its unit, formula and source, and the sheet of what is hidden", () => {
    const texts = textsOf("Names");
    for (const cell of model.cells.filter(({ implied }) => !implied))
      expect(texts).toContain(cell.name);
    expect(texts).toContain("on Workings");
    expect(texts).toContain("= PULL(hose,1 in)");
    expect(texts).toContain("= IF(ISNUMBER(wide),wide*plot/12,0)");
    expect(texts).toContain("0.2*flow^1.85/wide^4.87   with flow (gal/min), wide (in)");
    expect(texts).toContain("invented for the tests");
  });

  it("the sheet of workings numbers its rows as their table does", () => {
    const workings = content.sheets.find(({ name }) => name === "Workings");
    expect(workings?.state).toBe("hidden");
    expect([7, 8].map((line) => workings?.cells.get(`A${line}`))).toEqual([
      { value: 1 },
      { value: 2 },
    ]);
  });

  it("a sheet has a way back to the first one", () => {
    const link = { formula: `HYPERLINK("#'Summary'!A1","← Summary")`, value: "← Summary" };
    for (const name of ["Site", "Beds", "Checks", "Names", "Letter"]) {
      const sheet = content.sheets.find((one) => one.name === name);
      expect([...(sheet?.cells.values() ?? [])], name).toContainEqual(link);
    }
  });

  it("says which program wrote it, and no version of another one", () => {
    const parts = unzipSync(bytes);
    const app = strFromU8(parts["docProps/app.xml"] as Uint8Array);
    expect(app).toContain("<Application>rillbook</Application>");
    expect(app).not.toContain("AppVersion");
    expect(strFromU8(parts["docProps/core.xml"] as Uint8Array)).toContain(
      "<dc:title>Planting beds (invented), job T-1</dc:title>",
    );
    expect(strFromU8(parts["xl/theme/theme1.xml"] as Uint8Array)).toContain('name="rillbook"');
  });

  it("a caution that looks like a formula is text", () => {
    const letter = content.sheets.find(({ name }) => name === "Letter");
    expect([...(letter?.cells.values() ?? [])]).toContainEqual({
      value: "=1+1 is no formula here.",
    });
  });
});

describe("a template whose words need care", () => {
  it("is written in names, labels, notes and choices that a file can hold", async () => {
    const long = "A label & <markup> of more than thirty-two characters";
    const page = compile(
      tiny([
        t.lines("Heading & <more>", {
          width: t.input(t.length, long, {
            default: 2,
            least: 1,
            note: `"Note" ${"x".repeat(400)}`,
          }),
          kind: t.input(t.text, "Kind", { default: "a & b", choices: ["a & b", "c < d"] }),
          said: t.check("AND(width>0,LEN(kind)>0)", "{width} & <b>", { label: "B" }),
        }),
      ]),
      "us",
    );
    const found = calculate(
      page,
      page.cells.map(({ id, fixed }) =>
        id === "width" ? 2 : id === "kind" ? "a & b" : (fixed ?? null),
      ),
    );
    const back = new exceljs.Workbook();
    const file = await writeWorkbook(page, found, toyIdentity);
    await back.xlsx.load(file as unknown as ArrayBuffer);
    const sheet = back.getWorksheet("Page");
    const {
      promptTitle = "",
      prompt = "",
      errorTitle = "",
    } = sheet?.getCell("B5").dataValidation ?? {};
    expect(promptTitle.length).toBeLessThanOrEqual(32);
    expect(errorTitle.length).toBeLessThanOrEqual(32);
    expect(prompt.length).toBeLessThanOrEqual(255);
    expect(sheet?.getCell("B6").dataValidation.formulae).toEqual(['"a & b,c < d"']);
    expect(sheet?.getCell("A5").value).toBe(long);
    expect(cellAt(readWorkbook(file), "kind").cell.value).toBe("a & b");
  });
});

describe("on paper", () => {
  const long = compile(
    tiny([
      t.lines("Given", { given: t.input(t.number, "Given", { default: 1 }) }),
      ...["first", "second", "third"].map((name) =>
        t.table(
          name,
          name,
          { rows: 24 },
          {
            part: t.calc(t.number, (row) => `given+${row}`, "Part"),
            few: t.check("part<99", "{part} is too much", { label: "Few" }),
            odd: t.check("part>0", "{part} is too little", { label: "Odd" }),
          },
        ),
      ),
    ]),
    "us",
  );
  const found = calculate(
    long,
    long.cells.map(({ id, fixed }) => (id === "given" ? 1 : (fixed ?? null))),
  );
  const open = async () => {
    const back = new exceljs.Workbook();
    await back.xlsx.load((await writeWorkbook(long, found, toyIdentity)) as never);
    return back;
  };
  const xmlOf = async (part: string) =>
    strFromU8(unzipSync(await writeWorkbook(long, found, toyIdentity))[part] as Uint8Array);

  it("a page ends before a table that would be cut", async () => {
    const sheet = (await open()).getWorksheet("Page");
    expect(sheet?.pageSetup.printArea).toMatch(/^A1:J\d+$/);
    expect(sheet?.pageSetup.fitToPage).toBeFalsy();
    const breaks = [...(await xmlOf("xl/worksheets/sheet2.xml")).matchAll(/<brk id="(\d+)"/g)];
    const tops = long.placed.flatMap(({ block, top }) => (block.kind === "table" ? [top] : []));
    expect(breaks.length).toBeGreaterThan(0);
    for (const [, line] of breaks) expect(tops).toContain(Number(line) + 1);
  });

  it("of the checks, those that hold beyond the first page are left out", async () => {
    const { printArea = "" } = (await open()).getWorksheet("Checks")?.pageSetup ?? {};
    const rows = long.tables.get("check_list")?.columns.get("check")?.cells ?? [];
    expect(Number(/\d+$/.exec(printArea)?.[0])).toBeLessThan(rows[0]?.line as number);
  });

  it("of working lists nothing is printed: their print area is empty", async () => {
    const back = await open();
    for (const name of ["Trail", "Names"]) {
      const sheet = back.getWorksheet(name);
      const [, at = ""] = /^([A-Z]+)1:\1(?:2)$/.exec(sheet?.pageSetup.printArea ?? "") ?? [];
      expect(at, name).not.toBe("");
      expect(
        [1, 2].map((line) => sheet?.getCell(`${at}${line}`).value),
        name,
      ).toEqual([null, null]);
    }
  });

  it("rules of validation do not overlap", async () => {
    const rules = [
      ...strFromU8(unzipSync(bytes)["xl/worksheets/sheet4.xml"] as Uint8Array).matchAll(
        /<dataValidation [^>]*sqref="([^"]*)"/g,
      ),
    ];
    expect(rules.map(([, area]) => area)).toEqual(expect.arrayContaining(["B8:B11", "C8:C11"]));
  });
});
