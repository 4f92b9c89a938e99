import { beforeAll, describe, expect, test } from "vitest";
import { auditWorkbook } from "../../../engine/audit/audit.js";
import type { Finding } from "../../../engine/audit/finding.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import type { Value } from "../../../engine/formula/value.js";
import type { JobRecord } from "../../../engine/job/record.js";
import { takeWorkbook } from "../../../engine/take/take.js";
import { modelOf } from "../../../engine/template/models.js";
import { matchWorkbook } from "../../../engine/workbook/match/match.js";
import type { CellValue, WorkbookContent } from "../../../engine/workbook/read/content.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { namedCells } from "../../../engine/workbook/write/names-sheet.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { asking, askingIdentity, askingJob, askingValues } from "../../support/asking.js";

const model = modelOf(asking, "us");
let content: WorkbookContent;
const written = async (job: JobRecord) => {
  const values = calculate(model, askingValues(model, job));
  return readWorkbook(
    await writeWorkbook(model, values, { ...askingIdentity, trail: job.trail ?? [] }),
    {
      look: true,
    },
  );
};

beforeAll(async () => {
  content = await written(askingJob);
});

/** All but what is only to know, and inputs whose history this job does not tell. */
const grave = (findings: readonly Finding[]) =>
  findings.filter(({ code, grade }) => grade !== "to know" && code !== "input-untold");

test("every cell is found in its place, also those of a table on three sheets", () => {
  const found = matchWorkbook(content, model);
  expect(found.at.size).toBe(model.cells.length);
  expect(found).toMatchObject({ missing: [], moved: [], stray: [], inserted: [], shadowed: [] });
});

test("the names of columns point to the sheet that asks for them", () => {
  const areas = new Map(content.names.map(({ name, text }) => [name, text]));
  expect(areas.get("boards.long")).toMatch(/^'?Walk'?!/);
  expect(areas.get("boards.thick")).toMatch(/^'?Decisions'?!/);
  expect(areas.get("boards.hung")).toMatch(/^'?Boards'?!/);
  for (const { name } of namedCells(model)) expect(areas.has(name)).toBe(true);
});

test("an unchanged workbook is clean but for its inputs without a history, and gives back its record", async () => {
  const { findings } = await auditWorkbook(content, [asking]);
  expect(grave(findings)).toEqual([]);
  const taken = takeWorkbook(content, [asking], "bid.xlsx", taker, {
    record: askingJob,
    file: "j",
  });
  expect([taken.job, taken.entries, taken.findings]).toEqual([askingJob, [], []]);
});

const taker = { by: "A. Estimator", note: "seen", time: "2026-03-04T05:06:07.089Z" };

/** The workbook with values typed into cells, and nothing recalculated. */
function typed(values: Readonly<Record<string, CellValue>>): WorkbookContent {
  const { at } = matchWorkbook(content, model);
  const sheets = new Map(content.sheets.map((one) => [one.name, new Map(one.cells)]));
  for (const [id, value] of Object.entries(values)) {
    const place = at.get(id);
    if (place === undefined) throw new Error(`No cell ${id}.`);
    sheets.get(place.sheet)?.set(place.address, { value });
  }
  return {
    ...content,
    sheets: content.sheets.map((one) => ({ ...one, cells: sheets.get(one.name) ?? one.cells })),
  };
}

describe("what is typed on the asking sheets is taken in", () => {
  const edits = {
    wall: 14,
    "boards.long[3]": 4,
    "boards.name[3]": "Top",
    "boards.thick[3]": 1.5,
    "paints.coats[3]": 0,
    paint: "oil",
    wage: 44,
  };
  test("with an entry for each, and the bid written again is clean", async () => {
    const { job, entries } = takeWorkbook(typed(edits), [asking], "bid.xlsx", taker);
    expect(Object.fromEntries(entries.map(({ input, new: now }) => [input, now]))).toEqual(edits);
    expect((job.inputs.boards as object[])[2]).toMatchObject({ name: "Top", long: 4, thick: 1.5 });
    const again = await auditWorkbook(await written(job), [asking]);
    expect(grave(again.findings)).toEqual([]);
  });

  test("a value against its rule is told on the sheet where it is typed", () => {
    const values = calculate(
      model,
      askingValues(model, {
        ...askingJob,
        inputs: { ...askingJob.inputs, boards: [{ name: "Low", long: 3, thick: 9 }] },
      }),
    );
    const at = (id: string) => values[model.byId.get(id)?.index as number];
    expect(at("boards.decisions_status[1]")).toBe("Thickness ← 0.5 to 3 in");
    expect(at("boards.walk_status[1]")).toBe("");
    expect([at("inputs_right_decisions"), at("inputs_right_walk")]).toEqual([false, true]);
  });

  test("a figure typed into a row that is not in use is told", () => {
    const given = askingValues(model);
    given[model.byId.get("boards.thick[3]")?.index as number] = 2;
    const values = calculate(model, given);
    const at = (id: string) => values[model.byId.get(id)?.index as number];
    expect(at("boards.decisions_status[3]")).toBe("← Board needed on Walk");
    expect(at("boards.walk_status[3]")).toBe("");
  });

  test("what is chosen stands ready in a row that begins on the walk, and says nothing by itself", () => {
    const given = askingValues(model);
    const put = (id: string, value: Value) => {
      given[model.byId.get(id)?.index as number] = value;
    };
    expect(given[model.byId.get("boards.thick[3]")?.index as number]).toBe(1);
    put("boards.name[3]", "High");
    const begun = calculate(model, given);
    const at = (values: readonly Value[], id: string) =>
      values[model.byId.get(id)?.index as number];
    expect(at(begun, "boards.walk_status[3]")).toBe("← Length needed");
    expect(at(begun, "boards.decisions_status[3]")).toBe("← Length needed on Walk");
    put("boards.long[3]", 4);
    const filled = calculate(model, given);
    expect(at(filled, "boards.surface[3]")).toBeGreaterThan(0);
    expect(at(filled, "boards.decisions_status[3]")).toBe("");
    expect(at(filled, "inputs_right_walk")).toBe(true);
  });
});

test("a formula overwritten in a part of a table is found", async () => {
  const { findings } = await auditWorkbook(typed({ "boards.name_on_decisions[1]": "Other" }), [
    asking,
  ]);
  expect(findings).toContainEqual(
    expect.objectContaining({ code: "formula-overwritten", name: "boards.name_on_decisions[1]" }),
  );
});
