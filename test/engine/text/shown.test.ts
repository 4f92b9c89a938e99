import { expect, test } from "vitest";
import { shownJson, shownText } from "../../../engine/text/shown.js";

test.each<[what: string, given: string, shown: string]>([
  ["lines and tabs stay", "a\tb\n", "a\tb\n"],
  ["letters, signs and pictures stay", "é漢ע🪨❤️⟨1⟩", "é漢ע🪨❤️⟨1⟩"],
  ["an escape of a terminal", "\u001b[31mred", "⟨U+001B⟩[31mred"],
  ["the same in one sign", "\u009b31m", "⟨U+009B⟩31m"],
  ["a return to the start of the line", "bad\rgood", "bad⟨U+000D⟩good"],
  ["a bell, a backspace, a delete", "\u0007\u0008\u007f", "⟨U+0007⟩⟨U+0008⟩⟨U+007F⟩"],
  ["letters turned round", "\u202e001$\u202c", "⟨U+202E⟩001$⟨U+202C⟩"],
  ["isolates and marks", "\u2066\u2069\u200f\u061c", "⟨U+2066⟩⟨U+2069⟩⟨U+200F⟩⟨U+061C⟩"],
  ["no width", "a\u200bb\u00adc\u2060\ufeff", "a⟨U+200B⟩b⟨U+00AD⟩c⟨U+2060⟩⟨U+FEFF⟩"],
  ["ends of lines that only some see", "\u2028\u2029", "⟨U+2028⟩⟨U+2029⟩"],
  ["fillers and tags", "\u3164\u{e0041}", "⟨U+3164⟩⟨U+E0041⟩"],
  ["half a pair", "\ud800a", "⟨U+D800⟩a"],
])("%s", (_, given, shown) => {
  expect(shownText(given)).toBe(shown);
});

test("JSON holds nothing unseen and means the same", () => {
  const value = { "a\u202e": "\u001b\u009b\u{e0041}é🪨\u2028" };
  const text = shownJson(value, 2);
  expect(JSON.parse(text)).toEqual(value);
  expect(shownText(text)).toBe(text);
});
