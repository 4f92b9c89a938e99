import { unzipSync } from "fflate";
import { expect, test } from "vitest";
import type { WorkbookContent } from "../../../../engine/workbook/read/content.js";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { WorkbookRefused } from "../../../../engine/workbook/read/refused.js";
import { rows, workbook, zipped } from "./build.js";

const valid = workbook({
  sheets: {
    Falls: rows(
      '<c t="s"><v>0</v></c><c><v>2.5</v></c><c t="b"><v>1</v></c>',
      '<c><f t="shared" si="0" ref="A2:B2">B1*LOG10(A1)</f><v>3</v></c><c><f t="shared" si="0"/><v>4</v></c>',
      '<c t="inlineStr"><is><t>text</t></is></c><c t="str"><f>"a"&amp;B1</f><v>a2.5</v></c>',
    ),
    Pump: `${rows('<c t="e"><v>#N/A</v></c>')}<mergeCells><mergeCell ref="A1:B2"/></mergeCells>`,
  },
  strings: "<si><r><t>one</t></r><r><t>two</t></r></si>",
  names: '<definedName name="flow">Falls!$B$1</definedName>',
  core: "<dc:creator>office</dc:creator>",
  custom: '<property pid="2" name="template"><vt:lpwstr>waterfall</vt:lpwstr></property>',
});

/** A small repeatable generator (linear congruential, constants of Numerical Recipes). */
function generator(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** The content, or undefined for a refusal. Any other error fails the test. */
function attempt(bytes: Uint8Array): Omit<WorkbookContent, "partNames"> | undefined {
  try {
    const { partNames, ...content } = readWorkbook(bytes);
    return content;
  } catch (error) {
    if (error instanceof WorkbookRefused) return undefined;
    throw error;
  }
}

test("flipped bytes and cut files are refused, or read as what they were", () => {
  const whole = attempt(valid);
  let refused = 0;
  for (let seed = 0; seed < 400; seed++) {
    const random = generator(seed);
    const bytes = valid.slice(0, seed % 5 === 0 ? random(valid.length) : valid.length);
    for (let flips = 1 + random(3); flips > 0 && bytes.length > 0; flips--) {
      const at = random(bytes.length);
      bytes[at] = (bytes[at] as number) ^ (1 << random(8));
    }
    const content = attempt(bytes);
    if (content === undefined) refused++;
    else expect(content, `seed ${seed}`).toEqual(whole);
  }
  // The checksums do their work: nearly every byte matters.
  expect(refused).toBeGreaterThan(300);
});

const pieces = [
  "<",
  ">",
  "/>",
  '"',
  "&",
  "&amp;",
  "<v>",
  "</c>",
  "</row>",
  "<f>",
  't="s"',
  't="shared"',
  'r="A1"',
  "_x0000_",
  "]]>",
  "<!--",
  "<?x?>",
  "<![CDATA[",
  "-1",
  "99999999999",
  "1e400",
  "\u0000",
  "\ud800",
  "A1048577",
  "'",
  "xmlns=",
  "../",
];

test("edited parts are refused or read, with a right checksum", () => {
  const original = unzipSync(valid);
  const names = Object.keys(original);
  let read = 0;
  for (let seed = 0; seed < 400; seed++) {
    const random = generator(seed + 1000);
    const name = names[random(names.length)] as string;
    let text = Buffer.from(original[name] as Uint8Array).toString();
    for (let edits = 1 + random(2); edits > 0; edits--) {
      const at = random(text.length);
      const gone = random(3) === 0 ? random(40) : random(2);
      const piece =
        random(4) === 0
          ? text.slice(random(text.length)).slice(0, 60)
          : pieces[random(pieces.length)];
      text = text.slice(0, at) + piece + text.slice(at + gone);
    }
    if (attempt(zipped({ ...original, [name]: text })) !== undefined) read++;
  }
  expect(read).toBeGreaterThan(10);
});
