import { expect, test } from "vitest";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import { waterfall } from "../../../sheets/templates/waterfall.js";
import { tinyLines } from "../../support/tiny.js";

/** What a check tells a person to change is named as the sheet names it, with the name that commands take. */

test("the label, then the name in parentheses; the label alone where it comes again", () => {
  const page = tinyLines({
    board_width: t.input(t.length, "Width of boards"),
    wide_enough: t.check(
      "board_width>0",
      "board_width is {board_width}: enter board_width, not its board_color.",
      { label: "Boards too narrow" },
    ),
  });
  const said = compile(page, "us").byId.get("wide_enough")?.declaration;
  expect(said).toMatchObject({
    sentence:
      "Width of boards (board_width) is {board_width}: enter Width of boards, not its board_color.",
  });
});

const model = compile(waterfall, "us");
const sentences = new Map(
  model.cells.flatMap(({ name, declaration }) =>
    declaration.kind === "check" ? [[name, declaration.sentence] as const] : [],
  ),
);

test("no check of the template leaves a name without its label", () => {
  const bare = [...sentences].filter(([, sentence]) =>
    /[a-z]_[a-z]/.test(sentence.replace(/\{[^}]*\}| \([a-z_.]+\)/g, "")),
  );
  expect(sentences.size).toBeGreaterThan(100);
  expect(bare).toEqual([]);
});

test.each([
  ["liner_carried", "Raise People on hand (people_to_carry) on sheet Decisions"],
  ["trees.uncut", "enter Distance to digging (trees.dig_distance) on sheet Walk"],
  ["stone_in_band", "in Where stone goes (stone_places) on sheet Decisions"],
])("of a single cell, a row's own column, a table: %s", (name, words) => {
  expect(sentences.get(name)).toContain(words);
});
