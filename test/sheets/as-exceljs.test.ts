import { basename } from "node:path";
import { describe, test } from "vitest";
import { identityOf } from "../../engine/book/identity-of.js";
import { loadJob } from "../../engine/book/load-job.js";
import { valuesOf } from "../../engine/book/values.js";
import { calculateFast } from "../../engine/evaluate/calculate-fast.js";
import { templates } from "../../sheets/templates/index.js";
import { demoJobs } from "../support/demo.js";
import { randomJob } from "../support/random-job.js";
import { mustBeAsExceljs } from "../support/through-exceljs.js";

describe("the workbook of a job is spelled part by part as exceljs does:", () => {
  test.each(demoJobs().map((file) => [basename(file), file] as const))("%s", async (_, file) => {
    const loaded = await loadJob(file, templates);
    const { model, given } = loaded;
    await mustBeAsExceljs(model, calculateFast(model, given), identityOf(loaded));
    // every other input not given yet
    const half = given.map((value, i) =>
      i % 2 === 0 && model.cells[i]?.declaration.kind === "input" ? null : value,
    );
    await mustBeAsExceljs(model, calculateFast(model, half), identityOf(loaded));
  });

  // one of them in US customary units, one in SI
  test.each(["garden-corner", "metric-terrace"])("a random job by the book of %s", async (name) => {
    const file = demoJobs().find((one) => basename(one) === `${name}.json`) ?? "";
    const { model, book } = await loadJob(file, templates);
    for (const seed of [1, 2]) {
      const job = randomJob(model, book, seed);
      const values = calculateFast(model, valuesOf(model, job, book));
      await mustBeAsExceljs(model, values, identityOf({ model, job, book }));
    }
  });
});
