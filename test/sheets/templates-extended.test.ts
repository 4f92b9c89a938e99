import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import * as face from "../../engine/index.js";
import { templates, waterfall } from "../../sheets/templates/index.js";
import { demoFolder } from "../support/demo.js";

const { money } = face.quantities;

/** What an office adds for itself: a rule of its own that goes into the direct cost. Invented. */
const ours = face.extend(waterfall, {
  name: "our-waterfall",
  version: 1,
  cells: {
    "The price": {
      site_insurance: face.office(money, "Site insurance", {
        ...{ section: "Price", default: 250, least: 0, most: 1e6 },
        source: "invented for the test",
      }),
    },
  },
  change: { direct_cost: (formula) => `${formula}+site_insurance` },
});

// the pack test writes such a bid and audits it
test("an office's own rule goes from the waterfall's direct cost into its price", async () => {
  const path = join(demoFolder, "garden-corner.json");
  const record = JSON.parse(await readFile(path, "utf8")) as face.JobRecord;
  const office = join(demoFolder, record.office ?? "");
  const open = (job: face.JobRecord) => face.openJob(job, [ours, ...templates], { office });
  const plain = await face.calculateFast(await open(record));
  const bid = await face.calculateFast(await open({ ...record, template: "our-waterfall" }));
  expect(bid).toMatchObject({ inError: [], missing: [], stands: true });
  const [before, now] = [plain, bid].map(
    (one) => (name: string) => Number(face.valueAt(one, name)),
  ) as [(name: string) => number, (name: string) => number];
  expect(now("direct_cost")).toBeCloseTo(before("direct_cost") + 250, 6);
  expect(now("price")).toBeGreaterThan(before("price"));
});
