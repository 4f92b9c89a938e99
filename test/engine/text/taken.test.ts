import { expect, test } from "vitest";
import { takenLine, takenText } from "../../../engine/text/taken.js";

test.each<[what: string, given: string, kept: string]>([
  ["ends of lines of another system", "one\r\ntwo\rthree\nfour", "one\ntwo\nthree\nfour"],
  [
    "a tab, signs of every language, an escape of the format in words",
    "a\té漢🪨_x000D_",
    "a\té漢🪨_x000D_",
  ],
  ["what is only shown on its way out", "\u202eabc\u200b", "\u202eabc\u200b"],
])("kept: %s", (_, given, kept) => {
  expect(takenText(given)).toEqual({ text: kept });
});

test.each<[what: string, given: string, trouble: RegExp]>([
  ["a NUL", "a\u0000b", /holds the character U\+0000 \(place 2\), which no workbook keeps\./],
  ["a vertical tab", "\u000b", /U\+000B \(place 1\)/],
  ["a form feed", "\u000c", /U\+000C/],
  ["an escape of a terminal", "\u001b[2J", /U\+001B/],
  ["a delete", "\u007f", /U\+007F/],
  ["a control of the second set", "\u009b2J", /U\+009B/],
  ["the first half of a pair", "a\ud83e", /U\+D83E \(place 2\)/],
  ["the second half of a pair", "\udea8a", /U\+DEA8/],
  ["a byte order mark turned round", "\ufffe", /U\+FFFE/],
  ["more than a cell holds", "a".repeat(100_000), /has 100000 characters; a cell holds 32767/],
  ["more line feeds than a cell holds", "\n".repeat(300), /300 line feeds/],
])("refused: %s", (_, given, trouble) => {
  expect(takenText(given)).toEqual({ trouble: expect.stringMatching(trouble) });
});

test("what must stand in one line has no end of a line", () => {
  expect(takenLine("F-1")).toEqual({ text: "F-1" });
  expect(takenLine("F-1\r\nPrice: $1")).toEqual({
    trouble: expect.stringContaining("in one line"),
  });
});
