import { expect, test } from "vitest";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import { compile } from "../../../engine/template/compile.js";
import {
  calc,
  count,
  input,
  length,
  lines,
  sheet,
  smallLength,
  template,
  text,
} from "../../../engine/template/index.js";

const model = (units: "us" | "si") =>
  compile(
    template({
      name: "ratio",
      version: 1,
      title: "",
      sheets: [
        sheet("A", "", [
          lines("A", {
            room: input(length, "", { default: 11 }),
            box: input(smallLength, "", { default: 27 }),
            boxes: calc(count, "INT(room / box)", ""),
            said: calc(text, "FIXED(room / box, 3)", ""),
          }),
        ]),
      ],
      formulas: [],
      headline: [],
    }),
    units,
  );

// a ratio is a plain number also where its two sides stand in two units
test.each([
  ["us", 11, 27],
  ["si", 11 * 0.3048, 27 * 25.4],
] as const)("boxes of 27 in go into 11 ft four times, in %s", (units, room, box) => {
  const made = model(units);
  const values = made.cells.map(({ fixed, id }) =>
    id === "room" ? room : id === "box" ? box : (fixed ?? null),
  );
  const found = calculateFast(made, values);
  const at = (id: string) => found[made.byId.get(id)?.index ?? -1];
  expect([at("boxes"), at("said")]).toEqual([4, "4.889"]);
});
