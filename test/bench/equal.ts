import { valuesOf } from "../../engine/book/values.js";
import { calculateFast, firstDifference } from "../../engine/evaluate/calculate.js";
import { ManyJudge } from "../../engine/evaluate/judge-many.js";
import { validateJob } from "../../engine/job/validate.js";
import { tradeOf } from "../../engine/rerun/trade.js";
import { modelOf } from "../../engine/template/models.js";
import type { Template } from "../../engine/template/template.js";
import { unitSystems } from "../../engine/units/quantity.js";
import { templates } from "../../sheets/templates/index.js";
import { randomJob } from "../support/random-job.js";

/** `npm run bench:equal -- 1000 [office book]`: both evaluators on every cell of so many random jobs, to 1e-12. */
const [count = "1000", book = "sheets/demo/office-book.json"] = process.argv.slice(2);
const prices = await tradeOf(templates).readBook(book);
let [cells, differences] = [0, 0];
for (const system of unitSystems) {
  const model = modelOf(templates[0] as Template, system);
  let judge: ManyJudge | undefined;
  for (let seed = 0; seed < Number(count) / unitSystems.length; seed++) {
    const job = validateJob(model, randomJob(model, prices, seed), `seed ${seed}`);
    const given = valuesOf(model, job, prices);
    judge ??= new ManyJudge(model, given);
    cells += model.order.length;
    const cell = firstDifference(model, judge.values(given), calculateFast(model, given), 1e-12);
    if (cell === undefined) continue;
    differences += 1;
    process.stdout.write(`${system}, seed ${seed}: ${cell.id} differs\n`);
  }
  judge?.close();
}
process.stdout.write(`${count} jobs, ${cells} cells, ${differences} jobs with a difference\n`);
process.exitCode = differences === 0 ? 0 : 1;
