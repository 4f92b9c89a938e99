import { expect, test } from "vitest";
import { sourcesIn, textOf } from "./imports.js";

/** Words of one trade: whoever reads the engine should not be able to tell which it serves. */
const words = [
  ...["water", "waterfall", "waterfalls", "fall", "falls", "pump", "pumps", "stone", "stones"],
  ...["liner", "liners", "basin", "basins", "proposal", "proposals", "lip", "lips", "pond"],
  ...["flow", "flows", "gal", "gallon", "gallons", "gpm", "gph"],
];

/** Units and quantities that any trade may measure in. */
const units = /^engine\/units\//;

/** Where a word has another sense: the verb. */
const otherSense: readonly (readonly [file: RegExp, words: readonly string[]])[] = [
  [/^engine\/(compare\/change-order|workbook\/match\/align)\.ts$/, ["falls"]],
];

const wordsIn = (text: string): string[] =>
  text
    .replaceAll(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase()
    .split(/[^a-z]+/);

test("the engine has no word of the trade", () => {
  const found = sourcesIn(["engine"])
    .filter((file) => !units.test(file))
    .flatMap((file) => {
      const allowed = otherSense.flatMap(([where, senses]) => (where.test(file) ? senses : []));
      const said = new Set(wordsIn(textOf(file)));
      return words
        .filter((word) => said.has(word) && !allowed.includes(word))
        .map((word) => `${file}: ${word}`);
    });
  expect(found).toEqual([]);
});
