import { beforeAll, describe, expect, test } from "vitest";
import { auditWorkbook } from "../../../engine/audit/audit.js";
import { calculate } from "../../../engine/evaluate/calculate.js";
import type { TrailEntry } from "../../../engine/job/trail/entry.js";
import { reopened } from "../../../engine/take/reopen.js";
import { takeWorkbook } from "../../../engine/take/take.js";
import { modelOf } from "../../../engine/template/models.js";
import { template } from "../../../engine/template/template.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity } from "../../support/fence.js";
import { typedOver } from "../../support/typed-over.js";

/** The fence, whose customer is the one who chose. */
const signed = template({
  ...fence,
  roles: {
    ...{ price: "price", cost: "materials", sections: [] },
    givers: { walkedBy: "", walkedOn: "", chosenBy: "customer" },
  },
});
const model = modelOf(signed, "us");
const templates = [signed];
const time = "2026-03-04T05:06:07.089Z";
const named = { time, by: "A. Estimator" };
let bytes: Uint8Array;

beforeAll(async () => {
  bytes = await writtenWith(fenceGiven(model));
});

async function writtenWith(
  given: ReturnType<typeof fenceGiven>,
  trail: readonly TrailEntry[] = [],
) {
  const values = calculate(model, given);
  return writeWorkbook(model, values, { ...fenceIdentity(model), trail });
}

type Edits = Record<string, number | string | boolean>;
const edited = (edits: Edits, from = bytes) => readWorkbook(typedOver(from, model, edits));
const take = (edits: Edits, taker: { time: string; by?: string } = { time }) =>
  takeWorkbook(edited(edits), templates, "bid.xlsx", taker);

test.each<[string, Edits, string | undefined, string[]]>([
  ["a name that stood there answers for nothing", { margin: 0.1 }, undefined, ["nobody named"]],
  ["the taker is asked first", { margin: 0.1 }, "B", ["B"]],
  ["who was filled in with the changes", { margin: 0.1, customer: "C" }, undefined, ["C", "C"]],
])("who changed it: %s", (_, edits, by, expected) => {
  const { entries } = take(edits, { time, ...(by === undefined ? {} : { by }) });
  expect(entries.map((one) => one.by)).toEqual(expected);
});

describe("by nobody named", () => {
  /** The bid written again from an edited one, by nobody. */
  async function again(): Promise<Uint8Array> {
    const { given, trail } = reopened(edited({ margin: 0.1 }), templates, "bid.xlsx", { time });
    return writtenWith(given, trail);
  }
  const doubts = async (workbook: Uint8Array) =>
    (await auditWorkbook(readWorkbook(workbook), templates)).findings
      .filter(({ grade }) => grade === "doubtful")
      .map(({ code, name }) => [code, name]);

  test("the audit doubts it, until somebody is named", async () => {
    const unnamed = await again();
    expect(await doubts(unnamed)).toEqual([["input-untold", "margin"]]);
    const { given, trail, entries } = reopened(
      readWorkbook(unnamed),
      ...([templates, "bid.xlsx", named] as const),
    );
    expect(entries).toMatchObject([{ by: "A. Estimator", input: "margin", old: 0.1, new: 0.1 }]);
    expect(await doubts(await writtenWith(given, trail))).toEqual([]);
  });

  test("who takes in other changes does not answer for it", async () => {
    const changed = edited({ height: 6 }, await again());
    const { entries } = reopened(changed, templates, "bid.xlsx", named);
    expect(entries.map(({ input }) => input)).toEqual(["height"]);
  });

  test("taken into its record again with a name: the name is added, once", () => {
    const { job } = take({ margin: 0.1 });
    const into = (record: typeof job) =>
      takeWorkbook(edited({ margin: 0.1 }), templates, "bid.xlsx", named, { record, file: "j" });
    const first = into(job);
    expect(first.entries.map(({ by, note }) => [by, note])).toEqual([
      ["A. Estimator", "names who made the change of entry 1"],
    ]);
    expect(into(first.job).entries).toEqual([]);
  });
});
