import { expect, test } from "vitest";
import type { InputValues } from "../../../engine/job/record.js";
import { type ProductionRate, practice } from "../../../sheets/parts/rates.js";
import { wholeOf } from "../../../sheets/parts/whole.js";
import { waterfallParts } from "../../../sheets/templates/waterfall.js";
import { effects, exact, machine } from "./effects.js";
import { yard } from "./small-yard.js";

type Row = readonly (string | number)[];

/** Tables to read: `SHOWN=1 npx vitest run … test/sheets/build/shown.test.ts` prints them. No cell of one is blank. */
function shown(rows: readonly Row[]): readonly Row[] {
  if (process.env.SHOWN !== undefined) {
    process.stdout.write(`${rows.map((row) => row.join(" | ")).join("\n")}\n\n`);
  }
  for (const row of rows)
    for (const cell of row) expect(String(cell), row.join(" | ")).not.toBe("");
  return rows;
}
const dollars = (figure: number) => `$${Math.round(figure).toLocaleString("en-US")}`;

test("the same yard three ways", () => {
  const ways: [string, InputValues][] = [
    ["gate 4 ft, three steps: by hand", {}],
    ["gate 4 ft, ramped: small machine", { method_choice: "small machine" }],
    ["gate 10 ft, no steps: machine", { gate_width: 10, access_steps: 0 }],
  ];
  const told = ["task_hours", "work_days", "days_allowed"];
  const paid = ["material_cost", "labor_cost", "equipment_cost", "price", "price_per_foot"];
  const table = shown([
    ["way", ...told, ...paid, "stone_per_foot"],
    ...ways.map(([name, change]) => {
      const job = yard(change);
      return [
        name,
        ...told.map((id) => Math.round(job.figure(id))),
        ...paid.map((id) => dollars(job.figure(id))),
        job.figure("stone_per_foot").toFixed(2),
      ];
    }),
  ]);
  expect(new Set(table.slice(1).map((row) => row[7])).size).toBe(3);
});

test("price against size", () => {
  const price = (change: InputValues) => yard({ ...exact, ...change }).figure("price");
  const table = shown([
    ["change", "by hand", "with a machine", "why"],
    ...effects.map(([name, from, to, , , why]) => {
      const of = (base: InputValues) => {
        const before = price({ ...base, ...from });
        const more = price({ ...base, ...to }) - before;
        return `${dollars(more)} (${((100 * more) / before).toFixed(1)}%)`;
      };
      return [name, of({}), of(machine), why];
    }),
  ]);
  expect(table).toHaveLength(1 + effects.length);
});

test("every production rate", () => {
  const rates = wholeOf(waterfallParts).rates.filter(
    (one): one is ProductionRate => one.group === "production",
  );
  const table = shown([
    ["code", "what", "default", "unit", "band", "source"],
    ...rates.map(({ code, means, usual, unit, band, source }) => [
      code,
      means,
      usual,
      unit,
      band === undefined ? "-" : `${band.least.toFixed(2)} to ${band.most.toFixed(2)}`,
      source ?? practice,
    ]),
  ]);
  expect(table.length).toBeGreaterThan(45);
});
