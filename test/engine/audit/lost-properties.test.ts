import exceljs from "exceljs";
import { expect, test } from "vitest";
import { auditWorkbook } from "../../../engine/audit/audit.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { pageFence, pageWorkbook } from "../../support/fence-page.js";

test("a bid that exceljs saved: its lost properties are told as that, and nothing else is accused", async () => {
  const workbook = new exceljs.Workbook();
  await workbook.xlsx.load(Buffer.from(await pageWorkbook()) as unknown as ArrayBuffer);
  const saved = new Uint8Array(await workbook.xlsx.writeBuffer());
  const audit = await auditWorkbook(readWorkbook(saved), [pageFence]);
  expect(audit.model?.template.name).toBe("fence");
  expect(audit.findings.filter(({ grade }) => grade !== "to know")).toEqual([
    expect.objectContaining({ code: "property", found: expect.stringContaining("exceljs") }),
  ]);
});
