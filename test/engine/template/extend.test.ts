import { expect, test } from "vitest";
import * as face from "../../../engine/index.js";
import { fence, fenceBook, fenceJob } from "../../support/fence.js";

const { money, area } = face.quantities;

/** An office's own fence: a rule, a line, a sheet and a check more, and another default. All invented. */
const ours = face.extend(fence, {
  name: "our-fence",
  version: 1,
  cells: {
    Price: {
      permit: face.input(money, "Permit", { default: 120, least: 0 }),
      permit_paid: face.check("permit>0[$]", "No permit is priced: ask the town", {
        label: "Permit missing",
        level: "look",
      }),
    },
  },
  blocks: { Runs: [face.lines("Ours", { face_total: face.calc(area, "SUM(runs.face)", "Face") })] },
  sheets: [
    face.sheet("Gate", "What a gate takes.", [
      face.lines("Gate", { gate_share: face.calc(money, "gate_cost/2", "Half of the gate") }),
    ]),
  ],
  change: { price: (formula) => `${formula}+permit`, "runs.so_far": (formula) => formula },
  defaults: { margin: 0.25 },
  headline: ["face_total"],
});

const metric = { height: 1.7, runs: [{ label: "north", run: 18.8 }], paint: [{ coats: 2 }] };
const jobIn = (units: face.UnitSystem): face.JobRecord => ({
  ...fenceJob,
  ...{ template: "our-fence", version: 1, units },
  inputs: { ...fenceJob.inputs, ...(units === "si" ? metric : {}) },
});
const office = fenceBook;

test.each(["us", "si"] as const)("what is added counts, in %s", async (units) => {
  const bid = await face.calculate(await face.openJob(jobIn(units), [ours, fence], { office }));
  const value = (name: string) => Number(face.valueAt(bid, name));
  expect(bid.inError).toEqual([]);
  expect(value("price")).toBeCloseTo((value("materials") + value("labor")) / 0.75 + 120, 6);
  expect(value("face_total")).toBeGreaterThan(0);
  const audit = await face.auditWorkbook(await face.writeWorkbook(bid), [ours], office);
  expect(audit.findings.filter(({ grade }) => grade === "wrong")).toEqual([]);
});

test("the template that it is made from stays as it was", async () => {
  const bid = await face.calculateFast(await face.openJob(fenceJob, [ours, fence], { office }));
  const value = (name: string) => Number(face.valueAt(bid, name));
  expect(value("price")).toBeCloseTo((value("materials") + value("labor")) / 0.8, 6);
});

test("what is not there is named, with the nearest that is", () => {
  const none = () => "1";
  const extension = {
    cells: { Prise: {} },
    blocks: { Run: [] },
    change: { prise: none, margin: none },
    defaults: { margn: 1 },
  };
  const wrong = () => face.extend(fence, { name: "wrong", version: 1, ...extension });
  expect(wrong).toThrow(face.TemplateError);
  expect(wrong).toThrow(/block of lines headed "Prise".*"Price"/);
  expect(wrong).toThrow(/sheet "Run".*"Runs"/);
  expect(wrong).toThrow(/formula of "prise".*"price"/);
  expect(wrong).toThrow(/formula of "margin"/);
  expect(wrong).toThrow(/input "margn".*"margin"/);
});

test("what is added is checked as all else is", async () => {
  const cells = { Price: { lost: face.calc(money, "total_run", "Lost") } };
  const faulty = face.extend(fence, { name: "faulty", version: 1, cells });
  await expect(face.compile(faulty, "us")).rejects.toThrow(/lost/);
});
