import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { addressOf } from "../../engine/address.js";
import { loadJob } from "../../engine/book/load-job.js";
import { readOfficeBook } from "../../engine/book/read.js";
import { valuesOf } from "../../engine/book/values.js";
import { calculate, calculateFast } from "../../engine/evaluate/calculate.js";
import { CellError, type Value } from "../../engine/formula/value.js";
import type { JobRecord } from "../../engine/job/record.js";
import { jobSchema } from "../../engine/job/schema.js";
import { validateJob } from "../../engine/job/validate.js";
import type { Model } from "../../engine/template/model.js";
import { modelOf } from "../../engine/template/models.js";
import { layoutOf } from "../../engine/template/office-layout.js";
import type { Template } from "../../engine/template/template.js";
import { type UnitSystem, unitSystems } from "../../engine/units/quantity.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { templates } from "../../sheets/templates/index.js";
import { waterfall } from "../../sheets/templates/waterfall.js";
import { bidOf, type DemoBid, demoFolder, demoJobs } from "../support/demo.js";
import { inSi } from "../support/in-si.js";
import { linesOf, type PageName, pageCells } from "../support/page-cells.js";

const goldenSchema = ({ name, version }: Template, system: UnitSystem) =>
  join(demoFolder, "..", "templates", `${name}-${version}.${system}.schema.json`);

const published = templates.flatMap((template) =>
  unitSystems.map((system) => [template.name, system, template] as const),
);

test.each(published)(
  "the published schema of job records is the template's own: %s, %s",
  async (_, system, template) => {
    const schema = `${JSON.stringify(jobSchema(modelOf(template, system)), null, 2)}\n`;
    const file = goldenSchema(template, system);
    if (process.env.UPDATE_GOLDEN) await writeFile(file, schema);
    expect(await readFile(file, "utf8"), "run with UPDATE_GOLDEN=1 after a change").toBe(schema);
  },
);

describe("a demo bid", () => {
  let bid: DemoBid;
  beforeAll(async () => {
    bid = await bidOf(join(demoFolder, "hillside-stream.json"));
  }, 60_000);

  test("no number stands in the workbook without a formula, unless declared as given", () => {
    const content = readWorkbook(bid.bytes);
    const given = new Set<string>();
    for (const { declaration, sheet, column, line } of bid.model.cells) {
      if (["input", "published", "book"].includes(declaration.kind)) {
        given.add(`${sheet}!${addressOf(column, line)}`);
      }
    }
    const constants = content.sheets
      // they tell what the inputs were when the workbook was written
      .filter(({ name }) => name !== "Trail" && name !== "As written")
      .flatMap(({ name, cells }) =>
        [...cells].flatMap(([address, { value, formula }]) =>
          formula === undefined && typeof value !== "string" ? [`${name}!${address}`] : [],
        ),
      );
    expect(constants.length).toBeGreaterThan(300);
    expect(constants.filter((address) => !given.has(address))).toEqual([]);
  });

  test("no cell shows an error", () => {
    const errors = bid.model.cells.filter(({ index }) => bid.values[index] instanceof CellError);
    expect(errors.map(({ id }) => id)).toEqual([]);
  });

  test("nothing of the office's own stands on the Proposal", () => {
    const lines = bid.model.cells
      .filter(({ sheet }) => sheet === "Proposal")
      .map(({ index }) => String(bid.values[index]))
      .filter((line) => line !== "");
    expect(lines.length).toBeGreaterThan(25);
    const value = (name: string) => bid.values[bid.model.byId.get(name)?.index ?? -1] as number;
    const said = lines.join("\n");
    for (const name of ["total_cost", "direct_cost", "labor_cost", "overhead_cost", "profit"]) {
      expect(said, name).not.toContain(value(name).toLocaleString("en-US").slice(0, 6));
    }
    // no item code, name of a cell, error or empty figure
    expect(said).not.toMatch(
      /#N\/A|#VALUE|undefined|[a-z]_[a-z]|\b[a-z]+-\d|margin|markup|overhead/,
    );
    // what an input left blank would leave behind
    expect(said).not.toMatch(/ ,|: \.|(?<![\d.,])0 (ft|gal|ton|lb)\b/);
  });

  test("the lines of a page close up: nothing stands after the first empty one", () => {
    const flows = [...bid.model.tables.values()].filter(({ block }) => block.paper?.used);
    expect(flows.length).toBeGreaterThan(10);
    for (const { name, columns, block } of flows) {
      if (name === "set_out") continue;
      const [column] = columns.values();
      const shown = (column?.cells ?? []).map(({ index }) => bid.values[index]);
      const first = shown.indexOf("") < 0 ? shown.length : shown.indexOf("");
      expect(shown.slice(first).filter((line) => line !== "")).toEqual([]);
      // by this count rows are hidden that are not in use
      const used = bid.model.byId.get(block.paper?.used ?? "");
      expect(bid.values[used?.index as number], name).toBe(first);
    }
    for (const page of ["proposal", "crew", "handOver"] as const) {
      const said = pageCells(bid.model, page).filter(({ index }) => bid.values[index] !== "");
      expect(said.length, page).toBeGreaterThan(20);
    }
  });
});

describe("what the pages say", () => {
  const model = modelOf(waterfall, "us");
  const pages = async (file: string, change: Record<string, unknown> = {}) => {
    const path = join(demoFolder, file);
    const job = JSON.parse(await readFile(path, "utf8")) as JobRecord;
    const record = validateJob(model, { ...job, inputs: { ...job.inputs, ...change } }, path);
    const book = await readOfficeBook(join(demoFolder, "office-book.json"), layoutOf(waterfall));
    const values = calculateFast(model, valuesOf(model, record, book));
    const lines = (page: PageName) =>
      pageCells(model, page)
        .flatMap((cell) => linesOf(cell, String(values[cell.index])))
        .filter((line) => line !== "");
    const column = (table: string, key: string) =>
      (model.tables.get(table)?.columns.get(key)?.cells ?? []).map(({ index }) => values[index]);
    return { proposal: lines("proposal"), crew: lines("crew"), column };
  };

  test("the Proposal speaks to a customer: words for units, long dates, one light or four", async () => {
    const { proposal, crew } = await pages("hillside-stream.json");
    const said = proposal.join("\n");
    expect(said).toContain("November 2, 2026");
    expect(said).toContain("26 tons of stone");
    expect(said).toContain("square feet of wall face");
    expect(said).toContain("4 underwater lights");
    expect(said).toMatch(/unplug the pump, then rinse its intake/);
    expect(said).toMatch(/Unplug the pump before you reach into the water/);
    expect(said).not.toMatch(/ft²|gal\b|h\/day|kWh|DRAFT/);
    expect(crew.join("\n")).not.toMatch(/DRAFT/);
    const one = await pages("hillside-stream.json", { lights_wanted: 1 });
    expect(one.proposal).toContain("•  1 underwater light.");
  });

  test("while checks fail, both pages begin with DRAFT, and the crew is told to stop", async () => {
    const { proposal, crew } = await pages("garden-corner.json", {
      basin_depth: 6,
      working_radius: 40,
    });
    expect(proposal[0]).toMatch(/^DRAFT, not to be handed out: \d+ checks? fail/);
    expect(crew[0]).toBe(proposal[0]);
    expect(crew.join("\n")).toMatch(/STOP\. Do not lift: /);
    expect(crew.join("\n")).toMatch(/STOP\. Basin is dug 6 ft 2 in deep/);
  });

  test("electrical work is promised, left out, or by others: never two of these", async () => {
    const words = async (electrical_work: string) =>
      (await pages("garden-corner.json", { electrical_work })).proposal.join("\n");
    const included = /• {2}.*ground-fault protected outlet/;
    const left =
      /could not show; (permits beyond those named in this proposal; )?the electric circuit/;
    expect(await words("by us")).toMatch(included);
    expect(await words("by the customer")).not.toMatch(included);
    expect(await words("by the customer")).toMatch(left);
    expect(await words("by an electrician in our price")).toMatch(included);
    expect(await words("by an electrician in our price")).not.toMatch(left);
  });

  test("every piece of the liner plan is on the Crew sheet; lines not wanted are blank", async () => {
    const { crew, column } = await pages("hillside-stream.json");
    const taken = column("liner_pieces", "in_plan");
    const names = column("liner_pieces", "name").filter((_, i) => taken[i] === true);
    expect(names).toEqual(["Basin", "Stream"]);
    for (const name of names) {
      expect(crew.filter((line) => line.startsWith(`•  ${name}: finished`)).length).toBe(1);
    }
    // a line that is wanted has a whole number
    const wanted = column("crew_choice", "place").map((place) => Number.isInteger(place));
    const says = column("crew_lines", "says");
    expect(says.filter((_, i) => wanted[i] === false).join("")).toBe("");
    expect(wanted).toContain(false);
  });
});

describe("the same job in SI", () => {
  const metric = (file: string) => file.includes("metric");
  const inUs = demoJobs().filter((file) => !metric(file));
  test.each(inUs.map((file) => [file.split("/").at(-1) as string, file]))(
    "%s costs the same",
    async (_, file) => {
      const us = await loadJob(file, templates);
      const model = modelOf(us.model.template, "si");
      const record = validateJob(model, inSi(us.model, us.job), file);
      const si = calculateFast(model, valuesOf(model, record, us.book));
      const mine = calculateFast(us.model, us.given);
      for (const name of ["total_cost", "price", "man_hours", "work_days", "pump_watts"]) {
        const [a, b] = [at(us.model, mine, name), at(model, si, name)];
        expect(b / a, name).toBeCloseTo(1, 6);
      }
      expect(at(model, si, "total_flow") / 3.785411784).toBeCloseTo(
        at(us.model, mine, "total_flow"),
        4,
      );
    },
  );
});

test("an electrician without a quote takes as long in SI as in US units", async () => {
  const us = await loadJob(join(demoFolder, "hillside-stream.json"), templates);
  const unquoted = {
    ...us.job,
    inputs: {
      ...us.job.inputs,
      electrical_work: "by an electrician in our price",
      subcontracts: [],
    },
  };
  const model = modelOf(waterfall, "si");
  const si = calculateFast(
    model,
    valuesOf(model, validateJob(model, inSi(us.model, unquoted), "si"), us.book),
  );
  const mine = calculateFast(us.model, valuesOf(us.model, unquoted, us.book));
  expect(at(us.model, mine, "electrician_hours")).toBeGreaterThan(1);
  for (const name of ["electrician_hours", "electrician_cost"]) {
    expect(at(model, si, name) / at(us.model, mine, name), name).toBeCloseTo(1, 6);
  }
});

const at = (model: Model, values: readonly Value[], name: string): number =>
  values[model.byId.get(name)?.index ?? -1] as number;

describe("tables at their limits", () => {
  const model = modelOf(waterfall, "us");
  const basis = async (inputs: Record<string, unknown>) => {
    const file = join(demoFolder, "garden-corner.json");
    const job = JSON.parse(await readFile(file, "utf8")) as JobRecord;
    const record = validateJob(model, { ...job, inputs: { ...job.inputs, ...inputs } }, file);
    const book = await readOfficeBook(join(demoFolder, "office-book.json"), layoutOf(waterfall));
    return calculate(model, valuesOf(model, record, book));
  };
  const errorsIn = (values: readonly Value[]) =>
    model.cells.filter(({ index }) => values[index] instanceof CellError).map(({ id }) => id);

  test("every table full: both evaluators agree, no errors", { timeout: 60_000 }, async () => {
    const rows = <T>(count: number, row: (n: number) => T) =>
      Array.from({ length: count }, (_, i) => row(i + 1));
    const values = await basis({
      falls: rows(12, (n) => ({
        name: `Fall ${n}`,
        level: n,
        width: 2,
        drop: 0.8,
        look: "thin sheet",
      })),
      runs: rows(12, (n) => ({
        name: `Reach ${n}`,
        after_level: n,
        length: 5,
        width: 2.5,
        fall: 0.2,
      })),
      pools: rows(6, (n) => ({
        name: `Pool ${n}`,
        before_level: n * 2,
        length: 4,
        width: 3,
        depth: 1,
      })),
      pipe_lines: rows(8, (n) => ({
        name: `Outlet ${n}`,
        outlet_level: n,
        pipe_size: "1-1/2 in",
        length: 5 + n,
      })),
      berms: rows(4, (n) => ({ name: `Berm ${n}`, length: 10 + n, height: 2 })),
      trees: rows(6, (n) => ({
        name: `Tree ${n}`,
        trunk: 10 + n,
        distance: 12,
        fill_planned: 0.2,
      })),
      walls: rows(4, (n) => ({ name: `Wall ${n}`, length: 8 + n, height: 1.5, kind: "stone" })),
      main_size: "4 in",
      pump_choice: "P-200V",
    });
    expect(errorsIn(values)).toEqual([]);
    expect(at(model, values, "total_flow")).toBeGreaterThan(0);
  });

  test("every table empty: checks say what is missing, no errors", {
    timeout: 60_000,
  }, async () => {
    const values = await basis({ falls: [], runs: [], pipe_lines: [] });
    expect(errorsIn(values)).toEqual([]);
    expect(values[model.byId.get("some_falls")?.index ?? -1]).toBe(false);
    expect(values[model.byId.get("some_lines")?.index ?? -1]).toBe(false);
  });
});

test("everything bought stands on Orders: lines, further lines, the pump", async () => {
  const { model, values } = await bidOf(join(demoFolder, "hillside-stream.json"));
  const cellsNamed = (name: string) => model.cells.filter((cell) => cell.name === name);
  const filled = (name: string) =>
    cellsNamed(name).filter(({ index }) => Number(values[index]) > 0).length;
  const listed = model.cells.filter(
    ({ name, index }) => /^order_\d\.what$/.test(name) && values[index] !== "",
  );
  expect(filled("materials.order_quantity")).toBeGreaterThan(20);
  expect(listed).toHaveLength(
    filled("materials.order_quantity") + filled("additional_items.order_quantity") + 1,
  );
});
