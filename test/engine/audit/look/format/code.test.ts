import { expect, test } from "vitest";
import { printedForm } from "../../../../../engine/audit/look/format/code.js";

/** Each: a number format, and another one. */
const alike: [string, string][] = [
  ['"$"#,##0', "\\$#,##0"],
  ["[Red]0.0", "0.0"],
  ["mmm d, yyyy", 'mmm\\ d", "yyyy'],
  ["mmm d, yyyy;;", "mmm\\ d\\,\\ yyyy;;;"],
];
const unlike: [string, string][] = [
  ["#,##0", "##0"],
  ["#,##0", '#","##0'],
  ["0,", "0"],
  ["mmm d, yyyy", "mmm d yyyy"],
  ["0.0;[White]0.0", "0.0;0.0"],
];

test.each(alike)("%s prints numbers as %s does", (one, other) => {
  expect(printedForm(one, false)).toBe(printedForm(other, false));
});

test.each(unlike)("%s prints some number otherwise than %s", (one, other) => {
  expect(printedForm(one, false)).not.toBe(printedForm(other, false));
});
