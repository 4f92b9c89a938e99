import fc from "fast-check";
import { SaxesParser } from "saxes";
import { expect, test } from "vitest";
import { byteText } from "../../../../engine/workbook/read/byte-text.js";
import { walkPlainXml } from "../../../../engine/workbook/read/plain-xml.js";

type Told = unknown[];

/** What the plain walk tells; undefined where it leaves the text to the full parser. */
function plainly(text: string): Told | undefined {
  const told: Told = [];
  const plain = walkPlainXml(byteText(Buffer.from(text)) as string, {
    open: ({ name, local, uri }, attributes, count) =>
      told.push(["open", name, local, uri, count, { ...attributes }]),
    wants: () => true,
    text: (piece) => told.push(["text", piece]),
    close: () => told.push(["close"]),
  });
  if (!plain) expect(told).toEqual([]);
  return plain ? told : undefined;
}

/** What the full parser tells; undefined where it refuses the text. */
function fully(text: string): Told | undefined {
  const told: Told = [];
  const parser = new SaxesParser({ xmlns: true, position: false });
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, local, uri, attributes }) => {
    const count = Object.keys(attributes).length;
    told.push(["open", name, local, uri, count, { ...attributes }]);
  });
  let depth = 0;
  parser.on("opentagstart", () => {
    depth += 1;
  });
  parser.on("text", (piece) => depth > 0 && told.push(["text", piece]));
  parser.on("closetag", () => {
    depth -= 1;
    told.push(["close"]);
  });
  try {
    parser.write(text).close();
    return told;
  } catch {
    return undefined;
  }
}

const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\r\n';
const root = '<s xmlns="urn:a" xmlns:r="urn:b">';

test.each([
  `${head}${root}<c r="B12" s="4" t="str"><f>A1&gt;2&amp;"x"</f><v>1</v></c></s>`,
  `${root}<c r:id="rId1" xml:space="preserve"/> a&#10;b&#x1F600;c </s>\n`,
  `${root}<r:x></r:x></s>`,
  `<s xmlns:r="urn:é"><r:c r:a="é&#233;">ü\u0085\ufffd\u{1F600}</r:c></s>`,
  "\ufeff<s/>",
  "<s/>",
])("plain: %s", (text) => {
  expect(plainly(text)).toEqual(fully(text));
  expect(plainly(text)).toBeDefined();
});

test.each([
  `<!DOCTYPE s>${root}</s>`,
  `${root}<!-- a --></s>`,
  `${root}<![CDATA[a]]></s>`,
  `${root}<?go on?></s>`,
  `${root}<c xmlns="urn:c"/></s>`,
  `${root}<c a='1'/></s>`,
  `${root}<c a="1" a="2"/></s>`,
  `${root}<c a="1\n2"/></s>`,
  `${root}<x:c/></s>`,
  `${root}<c>&other;</c></s>`,
  `${root}<c>&#0;</c></s>`,
  `${root}<c>a & b</c></s>`,
  `${root}<c>]]></c></s>`,
  `${root}<c>\u0001</c></s>`,
  `${root}<c>\ufffe</c></s>`,
  `${root}<c>\uffff</c></s>`,
  `${root}<c></d></s>`,
  `${root}<c>`,
  `${root}</s><s/>`,
  `${root}</s>a`,
  '<?xml version="1.1"?><s/>',
  "",
])("left to the full parser: %s", (text) => {
  expect(plainly(text)).toBeUndefined();
});

test("whatever is plain, the full parser takes and tells the same", () => {
  const pieces = [
    ...[
      "<c>",
      "</c>",
      "<c/>",
      '<c a="1">',
      "<r:d>",
      "</r:d>",
      '<v a="&lt;" r:b="x"/>',
      "<v>",
      "</v>",
    ],
    ...[
      "text",
      " ",
      "\n",
      "\r\n",
      "&amp;",
      "&lt;",
      "&#38;lt;",
      "&#x41;",
      "&amp",
      "]]>",
      "<",
      ">",
      '"',
      "é",
      "😀",
    ],
    ...["<!-- -->", "<![CDATA[x]]>", "<?p?>", '<c  b="2" >', "<c a=''>", "</c >", '<c a="b>c"/>'],
  ];
  let plain = 0;
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 9 }), (parts) => {
      const text = `${root}${parts.join("")}</s>`;
      const told = plainly(text);
      if (told === undefined) return;
      plain += 1;
      expect(joined(told)).toEqual(joined(fully(text)));
    }),
    { numRuns: 20_000, seed: 1 },
  );
  expect(plain).toBeGreaterThan(1000);
});

/** The full parser may tell one text in pieces. */
function joined(told: Told | undefined): Told | undefined {
  if (told === undefined) return undefined;
  const all: Told = [];
  for (const one of told) {
    const last = all.at(-1);
    if (isText(one) && isText(last)) all[all.length - 1] = ["text", last[1] + one[1]];
    else all.push(one);
  }
  return all;
}

const isText = (one: unknown): one is ["text", string] => Array.isArray(one) && one[0] === "text";
