import { describe, expect, it } from "vitest";
import { valuesOf } from "../../../engine/book/values.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import { saidBy } from "../../../engine/evaluate/said-by.js";
import { CellError, type Value } from "../../../engine/formula/value.js";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import type { Cell } from "../../../engine/template/model.js";
import { tiny } from "../../support/tiny.js";
import { toy, toyBook, toyJob } from "../../support/toy.js";

const model = compile(toy, "us");
const given = valuesOf(model, toyJob, toyBook);

/** The values of the toy job with some cells overwritten, as a person may in a spreadsheet. */
function changed(change: Record<string, Value>): (id: string) => Value {
  const all = [...given];
  for (const [id, value] of Object.entries(change)) {
    all[model.byId.get(id)?.index as number] = value;
  }
  const values = calculate(model, all);
  return (id) => values[model.byId.get(id)?.index as number] as Value;
}

const needed = "← needed";
const notNumber = "← a number, please";
const singles: [input: string, value: Value, message: string][] = [
  ["plot", 1, ""],
  ["plot", 500, ""],
  ["plot", 0.999, "← 1 to 500 ft"],
  ["plot", 500.001, "← 1 to 500 ft"],
  ["plot", -20, "← 1 to 500 ft"],
  ["plot", null, needed],
  ["plot", "twenty", notNumber],
  ["plot", "20", notNumber],
  ["plot", true, notNumber],
  ["spare", 0, ""],
  ["spare", 0.5, ""],
  ["spare", 15, "← 0% to 50%"],
  ["people", 3, ""],
  ["people", 2.5, "← a whole number, 1 to 9"],
  ["people", 10, "← a whole number, 1 to 9"],
  ["hose", 0, ""],
  ["hose", -1, "← at least 0 gal/min"],
  ["lowest", -9.5, ""],
  ["lowest", -9.6, "← -9.5 to 0"],
  ["begin", null, ""],
  ["begin", 46000, ""],
  ["begin", "soon", notNumber],
  ["customer", null, needed],
  ["customer", "=1+1", ""],
  ["finish", "smooth", ""],
  ["finish", "SMOOTH", ""],
  ["finish", "shiny", "← not one of the choices"],
  ["finish", null, needed],
];

describe("the message beside an input", () => {
  it.each(singles)("%s of %j: %s", (input, value, message) => {
    const of = changed({ [input]: value });
    expect(of(`${input}_status`)).toBe(message);
    expect(of("inputs_right_site")).toBe(message === "");
  });

  it("gives the rule in the units of the system", () => {
    const metric = compile(toy, "si");
    const values = [...valuesOf(metric, { ...toyJob, units: "si" }, toyBook)];
    values[metric.byId.get("plot")?.index as number] = 200;
    values[metric.byId.get("depth")?.index as number] = 20;
    const found = calculate(metric, values);
    expect(found[metric.byId.get("plot_status")?.index as number]).toBe("← 0.3048 to 152.4 m");
    expect(found[metric.byId.get("depth_status")?.index as number]).toBe("← 25.4 to 609.6 mm");
  });
});

const rows: [what: string, change: Record<string, Value>, row: number, message: string][] = [
  ["all well", {}, 1, ""],
  ["a blank row", {}, 3, ""],
  ["out of range", { "beds.wide[1]": 121 }, 1, "Width ← 1 to 120 in"],
  ["a blank name", { "beds.name[2]": null }, 2, "Bed ← needed"],
  ["the first fault of several", { "beds.name[2]": null, "beds.wide[2]": 0.5 }, 2, "Bed ← needed"],
  ["not a choice", { "beds.soil[1]": "clay" }, 1, "Soil ← not one of the choices"],
  ["a blank choice", { "beds.soil[1]": null }, 1, "Soil ← needed"],
  ["an optional figure left out", { "beds.tall[2]": null }, 2, ""],
  ["an optional figure out of range", { "beds.tall[1]": -1 }, 1, "Height ← at least 0 in"],
  ["a stray name", { "beds.name[4]": "Lost" }, 4, "← Width needed"],
  [
    "text for the figure that opens the row",
    { "beds.wide[1]": "wide" },
    1,
    "← row not in use: complete or clear it",
  ],
  ["a third bed", { "beds.name[3]": "New", "beds.wide[3]": 20, "beds.soil[3]": "peat" }, 3, ""],
];

describe("the message of a row", () => {
  it.each(rows)("%s", (_, change, row, message) => {
    const of = changed(change);
    expect(of(`beds.status[${row}]`)).toBe(message);
    // what is wrong with the inputs comes before what follows from them
    if (message !== "") expect(of(`beds.to_do[${row}]`)).toBe(message);
    expect(of("inputs_right_beds")).toBe(message === "");
  });
});

describe("what a row has to say", () => {
  it("is the sentence of a check that fails, once the inputs are in order", () => {
    const narrow = "Bed Path is 6.00 in wide; 12 in is the least: widen it";
    expect(changed({ "beds.wide[2]": 6 })("beds.to_do[2]")).toBe(narrow);
    expect(changed({ "beds.wide[2]": 6 })("beds.to_do[1]")).toBe("");
    expect(changed({ "beds.wide[2]": 6, "beds.name[2]": null })("beds.to_do[2]")).toBe(
      "Bed ← needed",
    );
  });
});

describe("checks", () => {
  it("say ok, or their sentence with figures", () => {
    expect(changed({})("within_reach_message")).toBe("ok");
    expect(changed({ "beds.wide[1]": 100 })("within_reach_message")).toBe(
      "The widest bed is 100 in; 3.00 ft is the reach",
    );
  });

  it("are counted by level, and listed worst first", () => {
    const of = changed({ "beds.wide[1]": 100, "beds.wide[2]": 6, people: 2.5 });
    expect(of("checks_failed")).toBe(2);
    expect(of("warnings")).toBe(1);
    const shown = [1, 2, 3, 4].map((row) => [
      of(`check_shown.state[${row}]`),
      of(`check_shown.sheet[${row}]`),
      of(`check_shown.message[${row}]`),
    ]);
    expect(shown).toEqual([
      ["stop", "Beds", "Bed Path is 6.00 in wide; 12 in is the least: widen it"],
      [
        "stop",
        "Checks",
        "Sheet Site: People: ← a whole number, 1 to 9. Correct the one with an arrow beside it.",
      ],
      ["warning", "Prices", "The widest bed is 100 in; 3.00 ft is the reach"],
      ["", "", ""],
    ]);
  });

  it("of a table are told by the first row that fails, whichever other check of that row fails too", () => {
    const page = tiny([
      t.lines("", { most: t.input(t.number, "") }),
      t.table(
        "rows",
        "",
        { rows: 3 },
        {
          size: t.calc(t.number, (row) => `${row}`, ""),
          less: t.check("size<most", "{size|0} is not under {most|0}", { label: "" }),
          even: t.check("size<>2", "{size|0} is even", { label: "" }),
        },
      ),
    ]);
    const small = compile(page, "us");
    const values = calculate(
      small,
      small.cells.map(({ name, fixed }) => (name === "most" ? 2 : (fixed ?? null))),
    );
    const of = (id: string) => values[small.byId.get(id)?.index as number];
    expect([1, 2, 3].map((row) => of(`rows.to_do[${row}]`))).toEqual([
      "",
      "2 is not under 2",
      "3 is not under 2",
    ]);
    expect([1, 2].map((row) => of(`check_shown.message[${row}]`))).toEqual([
      "2 is not under 2",
      "2 is even",
    ]);
    const said = (id: string) => saidBy(small, small.byId.get(id) as Cell, values);
    expect(said("rows.less[3]")).toBe("3 is not under 2");
    expect(said("rows.even[2]")).toBe("2 is even");
  });

  it("beyond a page stand in the list by sheet alone", () => {
    const many = Object.fromEntries(
      Array.from({ length: 45 }, (_, i) => [`small_${i}`, t.check("most>0", "No", { label: "" })]),
    );
    const long = compile(tiny([t.lines("", { most: t.input(t.number, ""), ...many })]), "us");
    const values = calculate(
      long,
      long.cells.map(({ name, fixed }) => (name === "most" ? 0 : (fixed ?? null))),
    );
    const of = (id: string) => values[long.byId.get(id)?.index as number];
    expect(of("checks_failed")).toBe(45);
    expect(of("check_shown.state[40]")).toBe("stop");
    expect(long.byId.has("check_shown.state[41]")).toBe(false);
    expect(of("check_list.rank[45]")).toBe(45);
    expect(of("check_list.message[45]")).toBe("No");
  });

  it("of blank rows hold and say nothing", () => {
    const of = changed({});
    expect(of("beds.wide_enough[4]")).toBe(true);
    expect(of("beds.to_do[4]")).toBe("");
  });

  it("in error count as failed, and leave the others in the list", () => {
    const page = tiny([
      t.lines("", {
        part: t.input(t.number, ""),
        broken: t.check("1/part>0", "No: {part}", { label: "" }),
        fine: t.check("part<1", "No", { label: "" }),
      }),
      t.table(
        "rows",
        "",
        { rows: 2 },
        {
          broken: t.check((row) => `1/(part+${row}-1)>0`, "Row is broken", { label: "" }),
        },
      ),
    ]);
    const small = compile(page, "us");
    const values = calculate(
      small,
      small.cells.map(({ name, fixed }) => (name === "part" ? 0 : (fixed ?? null))),
    );
    const of = (id: string) => values[small.byId.get(id)?.index as number];
    expect(of("broken")).toBeInstanceOf(CellError);
    expect(of("checks_failed")).toBe(2);
    expect(of("check_shown.message[1]")).toMatch(
      /cannot be told: a figure that it needs is in error/,
    );
    expect(of("check_shown.message[2]")).toMatch(
      /cannot be told: a figure that it needs is in error/,
    );
    expect(of("check_shown.state[3]")).toBe("");
  });
});

describe("a formula that is but words", () => {
  const page = tiny([
    t.lines("", { part: t.input(t.number, "") }),
    t.table(
      "rows",
      "",
      { rows: 3 },
      {
        size: t.calc(t.number, (row) => (row === 2 ? "part*2" : `${row}`), "", { zero: "none" }),
        says: t.calc(t.text, '"a word"', ""),
        nothing: t.calc(t.text, '""', ""),
        sure: t.calc(t.yesno, "TRUE", ""),
        added: t.calc(t.number, "1+1", ""),
      },
    ),
  ]);
  const small = compile(page, "us");
  const cell = (id: string) => small.byId.get(id) as Cell;

  it.each([
    ["rows.says[3]", "a word"],
    // an empty text is no value that a cell could hold, and figures are formulas
    ["rows.size[1]", undefined],
    ["rows.sure[1]", undefined],
    ["rows.nothing[1]", undefined],
    ["rows.added[1]", undefined],
  ])("%s holds %j", (id, value) => {
    expect(cell(id).fixed).toBe(value);
    expect(cell(id).native === undefined).toBe(value !== undefined);
    expect(small.order.includes(cell(id))).toBe(value === undefined);
  });
});
