import { expect, test } from "vitest";
import { calculateFast } from "../../../engine/evaluate/calculate-fast.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { learningSizes } from "../../../sheets/learning/index.js";
import { drawFrom, modelFor, simulate, valuesFor } from "./simulated.js";

// a workbook that could be written and not be read again would be of no use: its rows are counted by the reader's limits
test("the largest workbook, full to its last row, is read again", async () => {
  const rows = Math.max(...learningSizes);
  const model = modelFor(rows);
  const truth = () => ({ theta: 0.1, sigma: 0.25 });
  const { learned, evidence, whole } = simulate(
    { rates: 40, jobs: rows / 40, truth, oldest: 6 },
    drawFrom(1),
  );
  expect(evidence).toHaveLength(rows);
  const given = valuesFor(model, { book_rates: learned, evidence, job_list: whole });
  const bytes = await writeWorkbook(model, calculateFast(model, given), {
    ...{ job: "L", template: model.template.name, version: 1, units: "us" },
    ...{ book: "Invented", bookAsOf: "2027-01-01", bookMark: "" },
  });
  const jobs = readWorkbook(bytes, { look: true }).sheets.find(({ name }) => name === "Jobs");
  expect(jobs?.cells.size).toBeGreaterThan(rows * 15);
});
