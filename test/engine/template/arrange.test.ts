import { describe, expect, it, test } from "vitest";
import { addressOf } from "../../../engine/address.js";
import { jobSchema } from "../../../engine/job/schema.js";
import { newJob } from "../../../engine/job/start.js";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import { xlsxFormula } from "../../../engine/template/printed.js";
import { asking } from "../../support/asking.js";
import { faultsOf } from "../../support/tiny.js";

const model = compile(asking, "us");
const unmoved = compile({ ...asking, asks: [] }, "us");
const cellAt = (id: string) => {
  const cell = model.byId.get(id);
  if (cell === undefined) throw new Error(`No cell ${id}.`);
  return cell;
};
const placeOf = (id: string) => {
  const { sheet, column, line } = cellAt(id);
  return `${sheet}!${addressOf(column, line)}`;
};
const formula = (id: string) => xlsxFormula(model, cellAt(id));

describe("an input stands on the sheet that asks for it", () => {
  test.each([
    ["customer", "Walk!B5"],
    ["customer_status", "Walk!D5"],
    ["paint", "Decisions!B5"],
    ["wage", "Office rules!B5"],
    ["free_wall", "Room!B6"],
    // a table whose columns stand on three sheets, row by row
    ["boards.long[1]", "Walk!B12"],
    ["boards.thick[1]", "Decisions!B10"],
    ["boards.surface[1]", "Boards!D7"],
    // a table of which nothing stays
    ["obstacles.taken[2]", "Walk!B20"],
    ["obstacles.status[2]", "Walk!C20"],
    ["tasks.rate[2]", "Office rules!B11"],
  ])("%s at %s", (id, place) => {
    expect(placeOf(id)).toBe(place);
  });

  it("and the asking sheets stand where the template puts them; one of which nothing stays is left out", () => {
    const names = model.sheets.map(({ name }) => name);
    expect(names).toEqual([
      "Walk",
      "Decisions",
      "Room",
      "Boards",
      "Price",
      "Office rules",
      "Checks",
    ]);
    const bare = { ...asking, sheets: asking.sheets.map((one) => onlyInputs(one)) };
    expect(faultsOf(bare).join("\n")).not.toMatch(/Room/);
  });

  it("in the section that it names, else in that of its block", () => {
    const walk = model.placed.filter(({ sheet }) => sheet === "Walk");
    expect(walk.map(({ block }) => block.heading)).toEqual(["Room", "Shelves", "Obstacles"]);
    const decisions = model.placed.filter(({ sheet }) => sheet === "Decisions");
    expect(decisions.map(({ block }) => block.heading)).toEqual([
      "Look",
      "Shelves",
      "Paint of each board",
    ]);
  });

  it("names, ids and what formulas say stay", () => {
    const declared = ({ cells }: typeof model) =>
      cells.filter(({ implied, sheet }) => !implied && sheet !== "Checks");
    const said = (one: typeof model) =>
      declared(one).map((cell) => [
        cell.id,
        xlsxFormula(one, cell).replace(/('[^']+'!)?[A-Z]+\d+/g, "@"),
      ]);
    expect(said(model).sort()).toEqual(said(unmoved).sort());
  });
});

/** A sheet without what is calculated, but for one figure that uses all its inputs. */
function onlyInputs(sheet: t.SheetDeclaration): t.SheetDeclaration {
  if (sheet.name !== "Room") return sheet;
  const blocks = sheet.blocks.map((block) =>
    block.kind === "lines"
      ? t.lines(block.heading, {
          customer: block.cells.customer as t.CellDeclaration,
          paint: block.cells.paint as t.CellDeclaration,
        })
      : block,
  );
  return { ...sheet, blocks };
}

describe("what the compiler adds", () => {
  test.each([
    // the first column heads the rows on each sheet
    ["boards.name_on_decisions[2]", "IF('Walk'!B13>0,'Walk'!A13&\"\",\"\")"],
    ["boards.name_again[1]", "IF('Walk'!B12>0,'Walk'!A12&\"\",\"\")"],
    // what is to be shown again beside the results
    ["boards.long_again[1]", "IF('Walk'!B12>0,'Walk'!B12,0)"],
    ["wall_again", "wall"],
    // a published figure is shown by itself
    ["tasks.task_on_office_rules[2]", ""],
    // one check for the inputs of each sheet that asks
    [
      "inputs_right_decisions",
      "AND('Decisions'!$D$5=\"\",SUMPRODUCT(('Decisions'!$D$10:$D$12<>\"\")*1)=0,SUMPRODUCT(('Decisions'!$C$17:$C$19<>\"\")*1)=0)",
    ],
  ])("%s: %s", (id, expected) => {
    if (!id.startsWith("inputs_right")) expect(cellAt(id).implied).toBe(true);
    // the status of single inputs is read by address
    expect(formula(id).replace(/'Decisions'!D5/, "'Decisions'!$D$5")).toBe(expected);
  });

  it("a published column shown again holds its figures", () => {
    expect(cellAt("tasks.task_on_office_rules[2]").fixed).toBe("paint");
  });

  it("one status of the inputs on each sheet of a table, and the checks at home", () => {
    const status = [...(model.tables.get("boards")?.columns.keys() ?? [])].filter((key) =>
      /status|message|to_do/.test(key),
    );
    expect(status).toEqual(["not_thin_message", "walk_status", "decisions_status"]);
    expect(cellAt("boards.not_thin_message[1]").sheet).toBe("Boards");
  });
});

test("a new record asks in the order of the walk, and its schema for each table once and whole", () => {
  const { inputs } = newJob(model, "S-1");
  expect(Object.keys(inputs)).toEqual([...["customer", "wall", "boards"]]);
  expect(inputs.boards).toEqual([{ long: null }]);
  const schema = jobSchema(model) as { properties: { inputs: { properties: object } } };
  expect(schema.properties.inputs.properties).toEqual(
    (jobSchema(unmoved) as typeof schema).properties.inputs.properties,
  );
});

describe("what does not hold together does not load", () => {
  const [walk, ...others] = asking.asks as readonly [t.AskingSheet, ...t.AskingSheet[]];
  const faults = (...asks: t.AskingSheet[]) => faultsOf({ ...asking, asks }).join("\n");
  test.each<[string, t.AskingSheet[], RegExp]>([
    [
      "a section that its sheet does not name",
      [{ ...walk, sections: ["Room", "Shelves"] }, ...others],
      /"obstacles" stands in section "Obstacles" of sheet "Walk", which its `sections` do not name\. Add it/,
    ],
    [
      "a section in which nothing stands",
      [{ ...walk, sections: [...walk.sections, "Stairs"] }, ...others],
      /Sheet "Walk": nothing stands in its section "Stairs"\. Take it out/,
    ],
    [
      "a section named twice",
      [{ ...walk, sections: [...walk.sections, "Room"] }, ...others],
      /its section "Room" is named twice/,
    ],
    ["a kind that no sheet asks for", [walk], /"paint" is asked for as "decision", but no sheet/],
    [
      "a kind that two sheets ask for",
      [walk, ...others, { ...walk, name: "Again", sections: [] }],
      /Sheet "Again": sheet "Walk" asks for "walk", too/,
    ],
    [
      "the name of another sheet",
      [{ ...walk, name: "Price" }, ...others],
      /two sheets have this name/,
    ],
    [
      "the name of a sheet of every workbook",
      [{ ...walk, name: "Checks" }, ...others],
      /every workbook/,
    ],
    [
      "a name that no sheet can have",
      [{ ...walk, name: "Walk?" }, ...others],
      /sheet names have none/,
    ],
  ])("%s", (_, asks, message) => {
    expect(faults(...asks)).toMatch(message);
  });

  it("columns of one table in two sections of a sheet", () => {
    const boards = t.table(
      "planks",
      "Planks",
      { rows: 2, section: "Room" },
      { wide: t.walk(t.length, "Wide"), deep: t.walk(t.length, "Deep", { section: "Shelves" }) },
    );
    const more = t.sheet("More", "More.", [boards]);
    expect(faultsOf({ ...asking, sheets: [...asking.sheets, more] }).join("\n")).toMatch(
      /Table "planks": its columns on sheet "Walk" name two sections, "Room" and "Shelves"/,
    );
  });

  it("a column that has the name of one that the compiler adds", () => {
    const sheets = asking.sheets.map((sheet) => ({
      ...sheet,
      blocks: sheet.blocks.map((block) =>
        block.kind === "table" && block.name === "boards"
          ? { ...block, columns: { ...block.columns, long_again: t.calc(t.length, "long", "") } }
          : block,
      ),
    }));
    expect(faultsOf({ ...asking, sheets }).join("\n")).toMatch(
      /the column "long_again" is made by the compiler/,
    );
  });

  it("an input that is only shown again", () => {
    const idle = t.lines("Idle", {
      idle: t.walk(t.length, "Idle", { again: true, section: "Room" }),
    });
    const more = t.sheet("More", "More.", [idle]);
    expect(faultsOf({ ...asking, sheets: [...asking.sheets, more] }).join("\n")).toMatch(
      /The input "idle" is used by no formula/,
    );
  });
});
