import { expect, test } from "vitest";
import * as face from "../../engine/index.js";
import { readPictures } from "../../engine/workbook/pictures/read.js";
import { fence, fenceBook, fenceJob } from "../support/fence.js";
import { png } from "../support/pictures.js";

/** What whoever imports the package may count on. A name taken away is a new major version. */
const promised = [
  ...["CellError", "RillbookError", "TemplateError", "WorkbookRefused"],
  ...[
    "template",
    "extend",
    "sheet",
    "lines",
    "table",
    "prose",
    "paragraphs",
    "panel",
    "row",
    "place",
  ],
  ...["chart", "unprinted", "input", "walk", "decide", "office", "calc", "check", "published"],
  ...["book", "formula", "columnOf", "oneLike", "quantity", "quantities", "unitNames"],
  ...["compile", "newJob", "openJob", "readOfficeBook", "starterBook"],
  ...["calculate", "calculateFast", "valueAt", "trace", "traceText"],
  ...["writeWorkbook", "readWorkbook", "auditWorkbook", "takeWorkbook", "rerun", "runCommand"],
  "errorCodes",
  "findingCodes",
];

test("what can be imported is exactly this", () => {
  expect(Object.keys(face).sort()).toEqual([...promised].sort());
});

const templates = [fence];

test.each(["us", "si"] as const)("a job goes all the way, in %s", async (units) => {
  const metric = { height: 1.7, runs: [{ label: "north", run: 18.8 }], paint: [{ coats: 2 }] };
  const inputs: face.JobRecord["inputs"] = {
    ...fenceJob.inputs,
    ...(units === "si" ? metric : {}),
  };
  const job = await face.openJob({ ...fenceJob, units, inputs }, templates, { office: fenceBook });
  const bid = await face.calculate(job);
  expect(bid).toMatchObject({ inError: [], missing: [], failed: [], stands: true });
  const fast = await face.calculateFast(job);
  expect(face.valueAt(bid, "price")).toBeCloseTo(Number(face.valueAt(fast, "price")), 6);

  const bytes = await face.writeWorkbook(bid);
  const content = await face.readWorkbook(bytes);
  expect(content.sheets.map(({ name }) => name)).toContain("Runs");
  const audit = await face.auditWorkbook(bytes, templates, fenceBook);
  expect(audit.findings.filter(({ grade }) => grade === "wrong")).toEqual([]);
  const taken = await face.takeWorkbook(bytes, templates, { by: "Estimator A" });
  expect(taken.entries).toEqual([]);
  expect(taken.job.inputs.runs).toEqual(inputs.runs);
  const node = await face.trace(bid, "price", 1);
  expect(await face.traceText(node)).toContain("(materials+labor)/(1-margin)");
});

const headed = face.extend(fence, {
  name: "fence-headed",
  version: fenceJob.version,
  sheets: [
    face.sheet(
      "Offer",
      "What the owner signs.",
      [
        face.panel([
          face.row(
            28,
            face.place([1, 9], "name", "An invented fence maker"),
            face.place([10, 3], "logo", ""),
          ),
        ]),
      ],
      { portrait: true },
    ),
  ],
});

test("a workbook takes the logo that it is given, and no other kind of file", async () => {
  const job = await face.openJob({ ...fenceJob, template: "fence-headed" }, [headed], {
    office: fenceBook,
  });
  const bid = await face.calculateFast(job);
  expect(readPictures(await face.writeWorkbook(bid)).pictures).toEqual([]);
  const logo = png(30);
  const [picture, ...more] = readPictures(await face.writeWorkbook(bid, { logo })).pictures;
  expect(picture).toMatchObject({ sheet: "Offer", bytes: logo });
  expect(more).toEqual([]);
  const refused = face.writeWorkbook(bid, { logo: new TextEncoder().encode("a letter") });
  await expect(refused).rejects.toThrow(/The logo given is no PNG or JPEG/);
  const large = face.writeWorkbook(bid, { logo: new Uint8Array(2_000_001) });
  await expect(large).rejects.toThrow(/2000001 bytes/);
});

test("a new job is a record that opens once it is filled in, or at once where that is asked for", async () => {
  const model = await face.compile(fence, "us");
  const job = await face.newJob(model, "F-2");
  await expect(face.openJob(job, templates, { office: fenceBook })).rejects.toThrow(/customer/);
  const open = { office: fenceBook, incomplete: true };
  const bid = await face.calculate(await face.openJob(job, templates, open));
  expect(bid.stands).toBe(false);
  expect(bid.missing).toContain("customer");
});

test("a name that is none is refused with the nearest one", async () => {
  const bid = await face.calculateFast(
    await face.openJob(fenceJob, templates, { office: fenceBook }),
  );
  expect(() => face.valueAt(bid, "prise")).toThrow(/"prise".*price/);
  await expect(face.trace(bid, "prise")).rejects.toThrow(/"prise".*price/);
});

test("a command line runs on templates of one's own", async () => {
  let out = "";
  const voices = {
    out: (text: string) => {
      out += text;
    },
    err: () => {},
  };
  expect(await face.runCommand(["names"], templates, voices)).toBe(0);
  expect(out).toMatch(/total_posts/);
});
