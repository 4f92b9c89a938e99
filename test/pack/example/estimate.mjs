import { readFile, writeFile } from "node:fs/promises";
import * as rillbook from "rillbook";
import fence from "./fence.mjs";

// A job goes all the way by import alone: node estimate.mjs job.json office.json dearer.json
const [job, office, dearer] = process.argv.slice(2);
const bid = await rillbook.calculate(await rillbook.openJob(job, [fence], { office }));
const file = job.replace(/\.json$/, ".xlsx");
await writeFile(file, await rillbook.writeWorkbook(bid));

const bytes = new Uint8Array(await readFile(file));
const book = await rillbook.readOfficeBook(office, fence);
const audit = await rillbook.auditWorkbook(bytes, [fence], book);
const taken = await rillbook.takeWorkbook(bytes, [fence], { by: "Estimator A" });
const lines = [];
const again = await rillbook.rerun(
  [fence],
  { jobs: [job, file], office: dearer, asOf: "2027-02-01" },
  { line: (line) => lines.push(line) },
);
const trace = await rillbook.traceText(await rillbook.trace(bid, "price", 1));

console.log(
  JSON.stringify({
    ...{ stands: bid.stands, price: rillbook.valueAt(bid, "price") },
    ...{ clean: audit.clean, entries: taken.entries.length, inputs: taken.job.inputs },
    ...{ jobs: again.totals.jobs, now: again.totals.price.now, trace },
  }),
);
