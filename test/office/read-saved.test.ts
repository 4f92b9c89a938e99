import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { cellAt, columnAt } from "../../engine/workbook/read/lookup.js";
import { readWorkbookFile } from "../../engine/workbook/read/read-file.js";
import { rows, workbook } from "../engine/workbook/read/build.js";
import { insertRow, recalculate } from "./soffice.js";

// A workbook that LibreOffice opened and stored: its own spelling of the format, read by our reader.

let folder: string;
let made: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-saved-"));
  made = join(folder, "made.xlsx");
  await writeFile(
    made,
    workbook({
      sheets: {
        "Water course": rows(
          '<c><v>2.5</v></c><c t="s"><v>0</v></c>',
          '<c><f t="shared" si="0" ref="A2:A4">A1*2+LOG10($A$1*40)</f><v>-999</v></c><c t="b"><v>1</v></c>',
          '<c><f t="shared" si="0"/><v>-999</v></c>',
          '<c><f t="shared" si="0"/><v>-999</v></c>',
          '<c t="str"><f>IF(A4&gt;1,"runs","still")</f><v>?</v></c><c t="e"><f>1/0</f><v>#DIV/0!</v></c>',
        ),
      },
      names: `<definedName name="flow">'Water course'!$A$1</definedName><definedName name="levels">'Water course'!$A$2:$A$4</definedName>
        <definedName name="state">'Water course'!$A$5</definedName><definedName name="label">'Water course'!$B$1</definedName>`,
      strings: '<si><r><t xml:space="preserve">stone </t></r><r><rPr><b/></rPr><t>lip</t></r></si>',
      custom:
        '<property fmtid="{D5CDD505-2E9C-101B-9397-08002B2CF9AE}" pid="2" name="template"><vt:lpwstr>waterfall</vt:lpwstr></property>',
    }),
  );
});
afterAll(() => rm(folder, { recursive: true }));

test("values, formulas, names and properties survive a save", async () => {
  const [saved] = await recalculate([made], join(folder, "out"));
  const content = await readWorkbookFile(saved as string);
  const cells = content.sheets[0]?.cells;
  expect(cellAt(content, "flow").cell).toEqual({ value: 2.5 });
  expect(cellAt(content, "label").cell).toEqual({ value: "stone lip" });
  expect(cellAt(content, "state").cell.value).toBe("runs");
  expect(cells?.get("B2")?.value).toBe(true);
  expect(cells?.get("B5")?.value).toEqual({ error: "#DIV/0!" });
  // 2 x + log10(100), three times over from 2.5.
  expect(columnAt(content, "levels").map(({ cell }) => cell.value)).toEqual([7, 16, 34]);
  expect(columnAt(content, "levels").map(({ cell }) => cell.formula)).toEqual([
    "A1*2+LOG10($A$1*40)",
    "A2*2+LOG10($A$1*40)",
    "A3*2+LOG10($A$1*40)",
  ]);
  expect(content.properties.custom.get("template")).toBe("waterfall");
});

test("names follow an inserted row", async () => {
  const out = join(folder, "moved.xlsx");
  await insertRow(made, "Water course", 1, out);
  const content = await readWorkbookFile(out);
  expect(cellAt(content, "flow")).toMatchObject({ address: "A2", cell: { value: 2.5 } });
  expect(columnAt(content, "levels").map(({ address }) => address)).toEqual(["A3", "A4", "A5"]);
});
