import { describe, expect, test } from "vitest";
import { calculate } from "../../../engine/evaluate/calculate.js";
import type { InputValues, JobRecord } from "../../../engine/job/record.js";
import { newJob } from "../../../engine/job/start.js";
import { inputOrigins } from "../../../engine/job/trail/origin.js";
import { valuesAsGiven } from "../../../engine/job/values.js";
import { readAssignment } from "../../../engine/set/assignment.js";
import { setInputs } from "../../../engine/set/set-inputs.js";
import { takeWorkbook } from "../../../engine/take/take.js";
import {
  calc,
  input,
  lines,
  number,
  percent,
  published,
  sheet,
  table,
  template,
  text,
} from "../../../engine/template/index.js";
import { modelOf } from "../../../engine/template/models.js";
import { matchWorkbook } from "../../../engine/workbook/match/match.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";

/** Payments whose rows are the person's own, and months that the template fixes. */
const payments = template({
  name: "payments",
  version: 1,
  title: "Payments (invented, for tests)",
  headline: ["whole"],
  formulas: [],
  sheets: [
    sheet("Payments", "For the tests.", [
      table(
        "draws",
        "Draws",
        {
          rows: 4,
          filled: "share>0",
          data: [
            { when: "start", share: 0.5 },
            { when: "half way", share: 0.3 },
            { when: "end", share: 0.2 },
          ],
        },
        {
          when: input(text, "When", { optional: true }),
          share: input(percent, "Share", { least: 0, most: 1 }),
          words: input(text, "Words", { optional: true, default: "please" }),
          said: calc(text, 'when&" "&words', "In words"),
        },
      ),
      table(
        "months",
        "Months",
        {
          rows: 2,
          data: [
            { month_name: "May", rain: 8 },
            { month_name: "June", rain: 6 },
          ],
        },
        {
          month_name: published(text, "Month", { source: "invented" }),
          rain: input(number, "Days of rain", { least: 0 }),
        },
      ),
      lines("In all", {
        whole: calc(percent, "SUM(draws.share)", "In all"),
        rainy: calc(number, "SUM(months.rain)", "Rain"),
      }),
    ]),
  ],
});
const model = modelOf(payments, "us");
const job = (inputs: InputValues): JobRecord => ({
  rillbook: 1,
  job: "P-1",
  template: "payments",
  version: 1,
  units: "us",
  inputs,
});
const column = (values: readonly unknown[], name: string) =>
  model.cells.filter((cell) => cell.name === name).map(({ index }) => values[index]);
const shares = (inputs: InputValues) => column(valuesAsGiven(model, job(inputs)), "draws.share");
const who = { by: "B", time: "2026-03-04T05:06:07.089Z", from: "drawing" } as const;
const setting = (inputs: InputValues, ...written: string[]) =>
  setInputs(
    model,
    job(inputs),
    written.map((one) => readAssignment(model, one)),
    who,
    "p.json",
  );

describe("rows that are the person's own", () => {
  test.each<[string, InputValues, unknown[]]>([
    ["not given: the template's", {}, [0.5, 0.3, 0.2, null]],
    [
      "fewer: no more than these",
      { draws: [{ share: 0.6 }, { share: 0.4 }] },
      [0.6, 0.4, null, null],
    ],
    ["none", { draws: [] }, [null, null, null, null]],
    ["one left blank", { draws: [{ share: 0.6 }, null, { share: 0.4 }] }, [0.6, null, 0.4, null]],
    [
      "a value left out is not the template's",
      { draws: [{ when: "start" }] },
      [null, null, null, null],
    ],
  ])("%s", (_, inputs, expected) => {
    expect(shares(inputs)).toEqual(expected);
  });

  test("columns have their default in the rows given, and in no others", () => {
    const values = valuesAsGiven(model, job({ draws: [{ share: 1 }] }));
    expect(column(values, "draws.words")).toEqual(["please", null, null, null]);
    expect(column(values, "draws.when")).toEqual([null, null, null, null]);
  });

  test("rows that the template fixes are filled one by one", () => {
    const values = valuesAsGiven(model, job({ months: [{ rain: 9 }] }));
    expect(column(values, "months.rain")).toEqual([9, 6]);
  });

  test("a new job has them in full, and the same values as one without", () => {
    const fresh = newJob(model, "P-1");
    expect(valuesAsGiven(model, fresh)).toEqual(valuesAsGiven(model, job({})));
  });
});

describe("set", () => {
  test("changes one row and keeps the others", () => {
    const set = setting({}, "draws.share[2]=25%");
    expect(shares(set.job.inputs)).toEqual([0.5, 0.25, 0.2, null]);
    expect(set.entries.map(({ input, old, new: now }) => [input, old, now])).toEqual([
      ["draws.share[2]", 0.3, 0.25],
    ]);
  });

  test("takes a row out, and the trail tells it", () => {
    const set = setting({}, "draws[3]=");
    expect(shares(set.job.inputs)).toEqual([0.5, 0.3, null, null]);
    expect(set.entries.map(({ input, new: now }) => [input, now])).toEqual([
      ["draws.when[3]", null],
      ["draws.share[3]", null],
      ["draws.words[3]", null],
    ]);
  });

  test("counts the rows given, not the template's", () => {
    const two = { draws: [{ share: 0.6 }, { share: 0.2 }] };
    expect(shares(setting(two, "draws.share[3]=20%").job.inputs)).toEqual([0.6, 0.2, 0.2, null]);
    expect(() => setting(two, "draws.share[4]=20%")).toThrow(/2 rows so far, and the next is 3/);
  });
});

test("a row of the template's that is not given is nobody's default", () => {
  const values = valuesAsGiven(model, job({ draws: [{ share: 0.5 }] }));
  const origins = inputOrigins(model, values, []);
  expect(origins.get("draws.share[1]")).toEqual({ from: "template default" });
  expect(origins.get("draws.share[2]")).toEqual({ from: "not in the trail" });
  expect(origins.get("draws.share[4]")).toEqual({ from: "template default" });
});

describe("take", () => {
  const book = { book: "none", bookAsOf: "2026-01-01", bookMark: "0".repeat(64) };
  const identity = { job: "P-1", template: "payments", version: 1, units: "us", ...book } as const;

  test.each<[string, InputValues, unknown[]]>([
    ["written without rows", {}, [0.5, 0.3, null, null]],
    ["written with three", newJob(model, "P-1").inputs, [0.5, 0.3, null, null]],
  ])("a row cleared in the workbook stays out: %s", async (_, inputs, expected) => {
    const record = job(inputs);
    const values = calculate(model, valuesAsGiven(model, record));
    const content = readWorkbook(await writeWorkbook(model, values, identity));
    const { at } = matchWorkbook(content, model);
    for (const key of ["when", "share", "words"]) {
      const place = at.get(`draws.${key}[3]`);
      const cells = content.sheets.find(({ name }) => name === place?.sheet)?.cells as Map<
        string,
        unknown
      >;
      cells.set(place?.address as string, { value: null });
    }
    const taker = { by: "B", time: who.time, note: "cut" };
    for (const into of [undefined, { record, file: "p.json" }]) {
      const taken = takeWorkbook(content, [payments], "p.xlsx", taker, into);
      expect(shares(taken.job.inputs)).toEqual(expected);
      expect(taken.job.inputs.draws).toHaveLength(2);
      expect(taken.entries.map(({ input }) => input)).toEqual([
        "draws.when[3]",
        "draws.share[3]",
        "draws.words[3]",
      ]);
    }
  });
});
