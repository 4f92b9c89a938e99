import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { calculate } from "../../engine/evaluate/calculate.js";
import { compile } from "../../engine/template/compile.js";
import * as t from "../../engine/template/index.js";
import { cellAt } from "../../engine/workbook/read/lookup.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { plantWrongValues } from "../support/plant.js";
import { tiny } from "../support/tiny.js";
import { toyIdentity } from "../support/toy.js";
import { compareWith } from "./differences.js";
import { recalculateInGnumeric } from "./gnumeric.js";
import { recalculate } from "./soffice.js";

// An error in a cell must show on the first sheet whichever program recalculates.

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-standing-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const model = compile(
  tiny([
    t.lines("Given", { part: t.input(t.number, "Part") }),
    t.lines("Made", {
      share: t.calc(t.number, "1/part", "Share"),
      said: t.calc(t.text, "~{share} of it", "In words"),
      enough: t.check("share>0", "{share} is too little", { label: "Too little" }),
    }),
  ]),
  "us",
);

async function bid(part: number): Promise<Uint8Array> {
  const given = model.cells.map(({ id, fixed }) => (id === "part" ? part : (fixed ?? null)));
  return writeWorkbook(model, calculate(model, given), toyIdentity);
}

test.each([
  ["LibreOffice", recalculate],
  ["Gnumeric", recalculateInGnumeric],
])(
  "%s says that a bid with an error does not stand, and one without does",
  async (program, run) => {
    for (const [part, said] of [
      [0, "NOT READY: cells in error on Page; 1 check fails. See sheet Checks."],
      [4, "READY: no check fails."],
    ] as const) {
      const bytes = await bid(part);
      const file = join(folder, `${program}-${part}.xlsx`);
      await writeFile(file, plantWrongValues(bytes).bytes);
      const [mended = ""] = await run([file], join(folder, "out"));
      expect((await compareWith(bytes, mended)).differences).toEqual([]);
      const found = readWorkbook(new Uint8Array(await readFile(mended)));
      expect(cellAt(found, "bid_verdict").cell.value).toBe(said);
    }
  },
);
