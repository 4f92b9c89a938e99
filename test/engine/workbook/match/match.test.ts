import { beforeAll, expect, test } from "vitest";
import { columnLetters } from "../../../../engine/address.js";
import { calculate } from "../../../../engine/evaluate/calculate.js";
import type { Cell } from "../../../../engine/template/model.js";
import { modelOf } from "../../../../engine/template/models.js";
import { identityOfWorkbook } from "../../../../engine/workbook/match/identity.js";
import { matchWorkbook } from "../../../../engine/workbook/match/match.js";
import { addressOf, positionOf } from "../../../../engine/workbook/read/address.js";
import type {
  CellContent,
  DefinedName,
  WorkbookContent,
} from "../../../../engine/workbook/read/content.js";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity } from "../../../support/fence.js";

const model = modelOf(fence, "us");
let content: WorkbookContent;

beforeAll(async () => {
  const values = calculate(model, fenceGiven(model));
  content = readWorkbook(await writeWorkbook(model, values, fenceIdentity(model)));
});

/** What a spreadsheet program does to values and names when a line is put in (or, -1, taken out). */
function shifted(sheet: string, line: number, by: 1 | -1 = 1): WorkbookContent {
  const moved = (row: number, edge: number) => (row >= line + edge ? row + by : row);
  const cells = (old: ReadonlyMap<string, CellContent>) =>
    new Map(
      [...old].flatMap(([address, cell]) => {
        const at = positionOf(address) as { row: number; column: number };
        if (by === -1 && at.row === line) return [];
        return [[addressOf({ ...at, row: moved(at.row, by === -1 ? 1 : 0) }), cell] as const];
      }),
    );
  const name = (old: DefinedName): DefinedName => {
    if (old.target?.sheet !== sheet) return old;
    const { from, to } = old.target;
    const edge = by === -1 ? 1 : 0;
    const target = {
      sheet,
      from: { ...from, row: moved(from.row, edge) },
      to: { ...to, row: by === -1 && to.row >= line ? to.row - 1 : moved(to.row, 0) },
    };
    return { ...old, target };
  };
  return {
    ...content,
    sheets: content.sheets.map((one) =>
      one.name === sheet ? { ...one, cells: cells(one.cells) } : one,
    ),
    names: content.names.map(name),
  };
}

const renamed = (name: string, change: (old: DefinedName) => DefinedName[]): WorkbookContent => ({
  ...content,
  names: content.names.flatMap((one) => (one.name === name ? change(one) : [one])),
});

const lineOf = (id: string): number => model.byId.get(id)?.line as number;
const valuesIn = (found: ReturnType<typeof matchWorkbook>) =>
  Object.fromEntries([...found.at].map(([id, { cell }]) => [id, cell.value]));

test("a workbook as written: every cell in its place, with its value and formula", () => {
  const found = matchWorkbook(content, model);
  expect(found.at.size).toBe(model.cells.length);
  expect(found).toMatchObject({ missing: [], moved: [], stray: [], inserted: [], shadowed: [] });
  expect(found.at.get("runs.run[2]")?.cell).toEqual({ value: 33.25 });
  for (const cell of model.cells) {
    const formula = found.at.get(cell.id)?.cell.formula;
    expect([cell.id, formula !== undefined]).toEqual([cell.id, cell.native !== undefined]);
  }
});

test("identity, in any letter case", () => {
  const custom = new Map([...content.properties.custom].map(([k, v]) => [k.toUpperCase(), v]));
  const other = { ...content, properties: { ...content.properties, custom } };
  expect(identityOfWorkbook(other)).toMatchObject({
    job: "F-1",
    template: "fence",
    version: 3,
    units: "us",
    book: "invented prices",
  });
  expect(identityOfWorkbook({ ...content, properties: { custom: new Map() } })).toEqual({});
});

test.each(model.sheets.map(({ name }) => name))(
  "a line inserted anywhere on sheet %s: the same values at the same names",
  (sheet) => {
    const before = valuesIn(matchWorkbook(content, model));
    const lines = model.cells.filter((cell) => cell.sheet === sheet).map(({ line }) => line);
    for (let line = 1; line <= Math.max(...lines) + 1; line++) {
      const found = matchWorkbook(shifted(sheet, line), model);
      expect([line, found.missing, found.stray]).toEqual([line, [], []]);
      expect([line, valuesIn(found)]).toEqual([line, before]);
    }
  },
);

test("a row inserted within a table is told apart from its rows", () => {
  const line = lineOf("runs.run[3]");
  const found = matchWorkbook(shifted("Runs", line), model);
  expect(found.inserted).toEqual([
    { table: "runs", sheet: "Runs", line, after: 2, filled: new Map() },
  ]);
  expect(found.at.get("runs.run[3]")?.cell.value).toBe(12);
  expect(found.at.get("runs.status[5]")?.cell.formula).toBeDefined();
});

test("a row inserted and filled by hand is told with what stands in it", () => {
  const line = lineOf("runs.run[2]");
  const grown = shifted("Runs", line);
  const cells = grown.sheets.find(({ name }) => name === "Runs")?.cells as Map<string, CellContent>;
  cells.set(`B${line}`, { value: 7 });
  const found = matchWorkbook(grown, model);
  expect(found.inserted[0]).toMatchObject({ line, after: 1 });
  expect([...(found.inserted[0]?.filled ?? [])]).toEqual([["runs.run", { value: 7 }]]);
  expect(found.at.get("runs.run[2]")?.cell.value).toBe(33.25);
});

test("a row deleted from a table: its columns lack their last row", () => {
  const found = matchWorkbook(shifted("Runs", lineOf("runs.run[2]"), -1), model);
  const ids = found.missing.map(({ id }) => id);
  expect(ids).toContain("runs.run[5]");
  expect(new Set(found.missing.map(({ reason }) => reason))).toEqual(
    new Set(["its row was deleted from the table"]),
  );
  expect(found.at.get("runs.run[2]")?.cell.value).toBe(12);
});

test.each(["height", "margin", "price", "runs.run", "takeoff.cost"])(
  "the name %s deleted: its cells are missing, all others are found",
  (name) => {
    const found = matchWorkbook(
      renamed(name, () => []),
      model,
    );
    expect(new Set(found.missing.map((one) => one.name))).toEqual(new Set([name]));
    expect(found.missing[0]?.reason).toBe("its name was deleted");
    expect(found.stray).toEqual([]);
  },
);

const pointedAt = (old: DefinedName, other: string): DefinedName[] => {
  const target = content.names.find(({ name }) => name === other)?.target;
  return [{ ...old, text: "", ...(target === undefined ? {} : { target }) }];
};

test.each([
  ["height", "wind"],
  ["wind", "height"],
  ["price", "total_run"],
])("of the single cell %s pointed at %s it is told where it belongs", (name, other) => {
  const found = matchWorkbook(
    renamed(name, (old) => pointedAt(old, other)),
    model,
  );
  const { sheet, line, column } = model.byId.get(name) as Cell;
  expect(found.stray[0]?.home).toEqual({ sheet, address: `${columnLetters(column)}${line}` });
});

test.each([
  ["height", "wind"],
  ["wind", "height"],
  ["margin", "price"],
  ["runs.run", "runs.face"],
  ["price", "total_run"],
  ["total_run", "worst_push"],
])("the name %s pointed at the cells of %s is told", (name, other) => {
  const found = matchWorkbook(
    renamed(name, (old) => pointedAt(old, other)),
    model,
  );
  expect(found.stray.map((one) => one.name)).toEqual([name]);
});

test("a name that stands for a constant or for several cells finds nothing, and says so", () => {
  const constant = renamed("height", (old) => [{ ...old, text: "4", target: undefined }]);
  expect(matchWorkbook(constant, model).missing).toEqual([
    { id: "height", name: "height", reason: 'its name stands for "4", not for cells' },
  ]);
  const several = renamed("height", (old) => pointedAt(old, "runs.run"));
  expect(matchWorkbook(several, model).missing[0]?.reason).toMatch(/not for one cell$/);
});

test("a sheet renamed is followed; a name that a sheet has for itself is told", () => {
  const name = (old: string) => (old === "Runs" ? "Fences" : old);
  const found = matchWorkbook(
    {
      ...content,
      sheets: content.sheets.map((one) => ({ ...one, name: name(one.name) })),
      names: [
        ...content.names.map((one) => ({
          ...one,
          target: one.target && { ...one.target, sheet: name(one.target.sheet) },
        })),
        { ...(content.names[0] as DefinedName), name: "Height", scope: "Fences" },
      ],
    },
    model,
  );
  expect(found.sheets.get("Runs")).toBe("Fences");
  expect(found.missing).toEqual([]);
  expect(found.shadowed).toEqual([{ name: "height", sheet: "Fences" }]);
});
