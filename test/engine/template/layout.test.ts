import { describe, expect, it, test } from "vitest";
import { addressOf, columnLetters } from "../../../engine/address.js";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import { placeBlocks } from "../../../engine/template/layout.js";
import type { Model } from "../../../engine/template/model.js";
import { judgeFormula, spokenFormula, xlsxFormula } from "../../../engine/template/printed.js";
import { tiny } from "../../support/tiny.js";
import { toy } from "../../support/toy.js";

describe("columnLetters", () => {
  const letters: [number, string][] = [
    [1, "A"],
    [26, "Z"],
    [27, "AA"],
    [52, "AZ"],
    [53, "BA"],
    [702, "ZZ"],
    [703, "AAA"],
    [16384, "XFD"],
  ];
  it.each(letters)("%d is %s", (column, expected) => {
    expect(columnLetters(column)).toBe(expected);
    expect(addressOf(column, 7)).toBe(`${expected}7`);
  });
});

const one = t.calc(t.number, "1", "");
const wide = (columns: number, note?: string) =>
  t.table(
    "grid",
    "Grid",
    { rows: 3, ...(note === undefined ? {} : { note }) },
    Object.fromEntries(Array.from({ length: columns }, (_, i) => [`k_${i + 1}`, one])),
  );
describe("blocks go down the sheet with a line between them", () => {
  it("from line 4", () => {
    const placed = placeBlocks(
      t.sheet("Page", "", [
        t.lines("", { a: one, b: one }),
        t.paragraphs("", "x"),
        wide(2),
        wide(2, "a note"),
        t.prose("", { d: t.calc(t.text, '"x"', "") }),
      ]),
    );
    expect(placed.map(({ top, bottom }) => [top, bottom])).toEqual([
      [4, 6],
      [8, 9],
      [11, 16],
      [18, 24],
      [26, 27],
    ]);
  });
});

describe("a table is one row a thing, as wide as a page", () => {
  const shown = (columns: number) => {
    const model = compile(
      tiny([
        wide(columns),
        t.lines("", { given: t.input(t.number, ""), used: t.calc(t.number, "given", "") }),
      ]),
      "us",
    );
    return model.placed.flatMap(({ sheet, band }) =>
      band === undefined || sheet === "Checks" ? [] : [[sheet, band.columns.length]],
    );
  };
  test.each<[number, [string, number][]]>([
    [1, [["Page", 1]]],
    [10, [["Page", 10]]],
    // what is too much stands among the workings, beside the first column again
    [
      11,
      [
        ["Page", 10],
        ["Workings", 2],
      ],
    ],
    [
      21,
      [
        ["Page", 10],
        ["Workings", 12],
      ],
    ],
  ])("%d columns: %j", (columns, expected) => {
    expect(shown(columns)).toEqual(expected);
  });

  it("results set in bold, inputs and the first column stay", () => {
    const block = t.table(
      "grid",
      "Grid",
      { rows: 2 },
      {
        name: t.calc(t.text, '"x"', "Name"),
        ...Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`k_${i}`, one])),
        result: t.calc(t.number, "1", "Result", { strong: true }),
        typed: t.input(t.number, "Typed", { default: 1 }),
        twice: t.calc(t.number, "typed*2", "Twice"),
        step: t.calc(t.number, "twice+1", "Step", { working: true }),
      },
    );
    const { placed } = compile(tiny([block]), "us");
    const [page, workings] = placed.flatMap(({ band, sheet }) =>
      band === undefined || sheet === "Checks" ? [] : [band.columns],
    );
    expect(page).toEqual([
      "name",
      ...[0, 1, 2, 3, 4].map((i) => `k_${i}`),
      "result",
      "typed",
      "status",
    ]);
    expect(workings).toEqual(["name_on_workings", "k_5", "k_6", "k_7", "k_8", "twice", "step"]);
  });
});

describe("cells and their addresses", () => {
  const model = compile(toy, "us");
  const placeOf = (id: string) => {
    const cell = model.byId.get(id);
    return cell && `${cell.sheet}!${addressOf(cell.column, cell.line)}`;
  };
  const places: [id: string, place: string][] = [
    ["customer", "Site!B5"],
    ["customer_status", "Site!D5"],
    ["remark", "Site!B6"],
    ["plot", "Site!B7"],
    ["soils.name[1]", "Soils!A7"],
    ["soils.weight[3]", "Soils!B9"],
    ["gravity", "Soils!B12"],
    // a note takes a line
    ["beds.name[1]", "Beds!A8"],
    ["beds.wide[4]", "Beds!B11"],
    ["beds.filling[1]", "Beds!G8"],
    // what a row has to say stands behind its last column
    ["beds.to_do[4]", "Beds!I11"],
    // checks, the status of inputs and what a page has no room for stand among the workings, beside the same thing
    ["beds.name_on_workings[1]", "Workings!A7"],
    ["beds.wide_enough[1]", "Workings!E7"],
    ["beds.status[4]", "Workings!F10"],
    ["greeting", "Letter!A5"],
  ];
  it.each(places)("%s is at %s", (id, place) => {
    expect(placeOf(id)).toBe(place);
  });

  it("puts no two cells in one place, and the rows of a column one after another", () => {
    const taken = model.cells.map(({ id }) => placeOf(id));
    expect(new Set(taken).size).toBe(model.cells.length);
    expect(model.cells.map(({ index }) => index)).toEqual(model.cells.map((_, i) => i));
    for (const { columns } of model.tables.values()) {
      for (const { cells } of columns.values()) {
        const [first] = cells;
        expect(cells.map(({ index }) => index)).toEqual(
          cells.map((_, i) => (first?.index ?? 0) + i),
        );
        expect(cells.map(({ line }) => line)).toEqual(cells.map((_, i) => (first?.line ?? 0) + i));
      }
    }
  });
});

describe("one formula, printed for each reader", () => {
  const us = compile(toy, "us");
  const si = compile(toy, "si");
  const by = (print: (model: Model, id: string) => string) => print;
  const xlsx = by((model, id) => xlsxFormula(model, model.byId.get(id) as never));
  const judge = by((model, id) => judgeFormula(model, model.byId.get(id) as never));
  const spoken = by((model, id) => spokenFormula(model.byId.get(id) as never));

  it("by names across, by address within a row", () => {
    expect(xlsx(us, "soil_total")).toBe("SUM(beds.filling)");
    expect(xlsx(us, "beds.surface[2]")).toBe("IF(ISNUMBER(B9),B9*plot/12,0)");
    expect(xlsx(us, "beds.carried[1]")).toBe("IF(ISNUMBER('Beds'!B8),'Beds'!G8,0)");
    expect(xlsx(us, "beds.carried[2]")).toBe("IF(ISNUMBER('Beds'!B9),B7+'Beds'!G9,0)");
    // beside another table, which lies on another sheet
    expect(xlsx(us, "bed_prices.label[3]")).toBe(`IF(ISNUMBER('Beds'!B10),'Beds'!A10&"","")`);
    // what the compiler adds has no name
    expect(xlsx(us, "inputs_right_beds")).toBe(`AND(SUMPRODUCT(('Workings'!$F$7:$F$10<>"")*1)=0)`);
  });

  it("by address only, with quotes joined and truth called, for the judge", () => {
    expect(judge(us, "soil_total")).toBe("SUM('Beds'!$G$8:$G$11)");
    expect(judge(us, "beds.carried[2]")).toBe("IF(ISNUMBER('Beds'!B9),'Workings'!B7+'Beds'!G9,0)");
    expect(judge(us, "beds.wide_enough[1]")).toBe("IF(ISNUMBER('Beds'!B8),'Beds'!B8>=12,TRUE())");
    expect(judge(us, "has_bed_message")).toContain(
      '("Fill in a "&CHAR(34)&"bed"&CHAR(34)&" first")',
    );
  });

  it("by name with named formulas closed, for people", () => {
    expect(spoken(us, "hose_loss")).toBe("PULL(hose,1 in)");
    expect(spoken(us, "beds.carried[2]")).toBe("IF(ISNUMBER(wide),above.carried+filling,0)");
    expect(spoken(us, "soil_total")).toBe("SUM(beds.filling)");
  });

  it("with the conversions of the system", () => {
    expect(xlsx(us, "hose_loss")).toBe("0.2*hose^1.85/1^4.87");
    expect(xlsx(si, "hose_loss")).toBe("0.2*(hose/3.785411784)^1.85/1^4.87*0.3048");
    expect(xlsx(si, "beds.surface[2]")).toBe("IF(ISNUMBER(B9),B9*plot/1000,0)");
  });

  it("fixes published figures in the units of the system", () => {
    expect(us.byId.get("soils.weight[1]")?.fixed).toBe(75);
    expect(si.byId.get("soils.weight[1]")?.fixed).toBeCloseTo(1201.38, 2); // 75 lb/ft³, NIST SP 811
    expect(si.byId.get("reach")?.fixed).toBe(0.9144);
    expect(si.byId.get("gravity")?.fixed).toBe(32.174);
  });
});

describe("the order of calculation", () => {
  it("has each formula after all that it reads", () => {
    const model = compile(toy, "us");
    const formulas = model.cells.filter(({ native }) => native !== undefined);
    expect(model.order).toHaveLength(formulas.length);
    expect(new Set(model.order).size).toBe(formulas.length);
  });

  it("does not depend on the order of declaration", () => {
    const model = compile(
      tiny([
        t.lines("", {
          last: t.calc(t.number, "middle+1", ""),
          middle: t.calc(t.number, "start_at*2", ""),
          start_at: t.input(t.number, ""),
        }),
      ]),
      "us",
    );
    const at = (name: string) => model.order.findIndex(({ id }) => id === name);
    expect(at("middle")).toBeLessThan(at("last"));
  });
});
