import type { OfficeBook } from "../../engine/book/office-book.js";
import { valuesOf } from "../../engine/book/values.js";
import type { Value } from "../../engine/formula/value.js";
import type { JobRecord } from "../../engine/job/record.js";
import * as t from "../../engine/template/index.js";
import type { Model } from "../../engine/template/model.js";
import type { Identity } from "../../engine/workbook/write/identity.js";

const source = "made up for the tests";

/**
 * A small invented trade, hanging shelves, whose inputs are asked for on sheets of their own: lists
 * gathered from two sheets, a table spread over three, and one that moves as a whole.
 */
export const asking = t.template({
  name: "shelves",
  version: 1,
  title: "Shelves (invented, for tests)",
  headline: ["price"],
  formulas: [],
  asks: [
    {
      asked: "walk",
      name: "Walk",
      purpose: "What the room says.",
      sections: ["Room", "Shelves", "Obstacles"],
    },
    {
      asked: "decision",
      name: "Decisions",
      purpose: "What is chosen.",
      sections: ["Look", "Shelves"],
    },
    {
      asked: "office",
      name: "Office rules",
      purpose: "What holds for every job.",
      sections: ["Labor"],
      stands: "last",
    },
  ],
  sheets: [
    t.sheet("Room", "The room.", [
      t.lines("Room", {
        customer: t.walk(t.text, "Customer"),
        wall: t.walk(t.length, "Wall", { least: 1, most: 50, again: true }),
        paint: t.decide(t.text, "Paint", {
          default: "white",
          choices: ["white", "oil"],
          section: "Look",
        }),
        free_wall: t.calc(t.length, "wall-SUM(obstacles.taken)", "Free wall"),
        in_the_way: t.calc(t.text, 'TEXTJOIN(", ",TRUE,obstacles.what)', "In the way"),
      }),
      t.table(
        "obstacles",
        "Obstacles",
        { rows: 2, filled: "taken>0" },
        {
          what: t.walk(t.text, "Obstacle", { optional: true }),
          taken: t.walk(t.length, "Wall taken", { optional: true, least: 0 }),
        },
      ),
    ]),
    t.sheet("Boards", "The boards.", [
      t.table(
        "boards",
        "Boards",
        { rows: 3, opening: 1, filled: "long>0", section: "Shelves", note: "One board a row." },
        {
          name: t.walk(t.text, "Board", { default: "Board" }),
          long: t.walk(t.length, "Length", { least: 0.5, most: 20, again: true }),
          thick: t.decide(t.smallLength, "Thickness", { default: 1, least: 0.5, most: 3 }),
          hooks: t.decide(t.count, "Override hooks", {
            optional: true,
            least: 0,
            whole: true,
            again: true,
          }),
          surface: t.calc(t.area, "long*10[in]", "Surface"),
          brackets: t.calc(t.count, "ROUNDUP(ROUND(long/2[ft],6),0)+1", "Brackets"),
          hung: t.calc(t.count, "IF(ISBLANK(hooks),brackets,hooks)", "Hooks"),
          not_thin: t.check(
            "thick*4[ft]>=1[in]*long",
            "{name} is {long} long and {thick} thick: choose it thicker on Decisions",
            {
              label: "Board thin",
            },
          ),
        },
      ),
      t.table(
        "paints",
        "Paint of each board",
        { rows: 3, beside: "boards", filled: "long>0", section: "Shelves" },
        {
          label: t.calc(t.text, "name", "Board"),
          coats: t.decide(t.count, "Coats", { default: 2, least: 0, most: 4, whole: true }),
          painted: t.calc(t.area, 'surface*coats*IF(paint="oil",2,1)', "Painted"),
        },
      ),
    ]),
    t.sheet("Price", "What it costs.", [
      t.table(
        "tasks",
        "Tasks",
        {
          rows: 2,
          data: [
            { task: "hang", rate: 0.25 },
            { task: "paint", rate: 0.05 },
          ],
          section: "Labor",
        },
        {
          task: t.published(t.text, "Task", { source }),
          rate: t.office(t.number, "Hours each", { least: 0, most: 9, decimals: 2 }),
          hours: t.calc(
            t.number,
            (row) => `rate*${["SUM(boards.hung)", "SUM(paints.painted)/1[ft²]"][row - 1]}`,
            "Hours",
          ),
        },
      ),
      t.lines("Labor", {
        wage: t.office(t.money, "Wage an hour", { default: 40, least: 1, most: 200 }),
        price: t.calc(t.money, "SUM(tasks.hours)*wage", "Price", { strong: true }),
        room_left: t.check(
          "free_wall>=MAX(boards.long)",
          "The wall has {free_wall} free: shorten a board on Walk",
          { label: "Wall full" },
        ),
        called: t.calc(t.text, '"Shelves for "&customer', "Called"),
      }),
    ]),
  ],
});

export const askingJob: JobRecord = {
  rillbook: 1,
  job: "S-1",
  template: "shelves",
  version: 1,
  units: "us",
  inputs: {
    customer: "Customer One",
    wall: 12,
    boards: [
      { name: "Low", long: 3 },
      { name: "High", long: 2.5, thick: 1.25, hooks: 5 },
    ],
    obstacles: [{ what: "door", taken: 3 }],
    paints: [{ coats: 2 }, { coats: 1 }],
    wage: 42,
  },
  trail: [],
};

export const askingIdentity: Identity = {
  job: "S-1",
  template: "shelves",
  version: 1,
  units: "us",
  book: "none",
  bookAsOf: "2026-03-01",
  bookMark: "b".repeat(64),
};

const noBook: OfficeBook = { name: "none", asOf: "2026-03-01", mark: "b".repeat(64), tables: {} };

export const askingValues = (model: Model, job: JobRecord = askingJob): Value[] =>
  valuesOf(model, job, noBook);
