import { type SaxesAttributeNS, SaxesParser } from "saxes";
import type { Budget } from "./limits.js";
import { damaged, WorkbookRefused } from "./refused.js";

export type Attributes = Readonly<Record<string, SaxesAttributeNS>>;

/** What a reader of one part wants to hear. Paths are local names from the root, as in "sst/si/t". */
export interface XmlVisitor {
  /** Vocabularies that count. An element of another one is passed over with all that is in it. */
  readonly namespaces: ReadonlySet<string>;
  /** Local name of the root element. */
  readonly root: string;
  open?(path: string, attributes: Attributes): void;
  text?(path: string, text: string): void;
  close?(path: string): void;
}

const deepest = 40;
const mostAttributes = 200;
const sliceBytes = 1 << 16;

/**
 * Reads one XML part from beginning to end. Throws WorkbookRefused for XML that is not well-formed, for
 * a document type or an entity of its own, for another encoding than UTF-8 or UTF-16, and for
 * nesting, attributes and elements past all use.
 */
export function walkXml(bytes: Uint8Array, part: string, budget: Budget, visitor: XmlVisitor) {
  const parser = new SaxesParser({ xmlns: true, position: false });
  // The path of each open element; undefined in a vocabulary that does not count.
  const open: (string | undefined)[] = [];
  let attributes = 0;

  parser.on("error", (error) => {
    throw damaged(`Part ${part} of the workbook is not well-formed XML (${error.message})`);
  });
  parser.on("doctype", () => {
    throw unsafe(part, "holds a document type declaration");
  });
  parser.on("xmldecl", ({ encoding }) => {
    if (!/^(utf-?8|utf-?16|us-ascii)?$/i.test(encoding ?? "")) {
      throw damaged(`Part ${part} of the workbook is in ${encoding}, not in UTF-8 or UTF-16`);
    }
  });
  parser.on("opentagstart", () => {
    attributes = 0;
    if (open.length >= deepest) throw unsafe(part, `is nested over ${deepest} levels deep`);
  });
  parser.on("attribute", () => {
    if (++attributes > mostAttributes) {
      throw unsafe(part, `has over ${mostAttributes} attributes on one element`);
    }
  });
  parser.on("opentag", (tag) => {
    budget.spend("markup", 1 + attributes, "The workbook");
    const counts = visitor.namespaces.has(tag.uri);
    if (open.length === 0) {
      if (!counts || tag.local !== visitor.root) {
        throw damaged(`Part ${part} of the workbook has <${tag.name}> in place of ${visitor.root}`);
      }
      open.push(tag.local);
    } else {
      const parent = open[open.length - 1];
      open.push(counts && parent !== undefined ? `${parent}/${tag.local}` : undefined);
    }
    const path = open[open.length - 1];
    if (path !== undefined) visitor.open?.(path, tag.attributes);
  });
  parser.on("closetag", () => {
    const path = open.pop();
    if (path !== undefined) visitor.close?.(path);
  });
  if (visitor.text !== undefined) {
    const hear = (text: string) => {
      const path = open[open.length - 1];
      if (path !== undefined) visitor.text?.(path, text);
    };
    parser.on("text", hear);
    parser.on("cdata", hear);
  }

  for (const text of decoded(bytes, part)) parser.write(text);
  parser.close();
}

function* decoded(bytes: Uint8Array, part: string): Generator<string> {
  const encoding =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? "utf-16le"
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? "utf-16be"
        : "utf-8";
  const decoder = new TextDecoder(encoding, { fatal: true });
  for (let at = 0; at < bytes.length || at === 0; at += sliceBytes) {
    let text: string;
    try {
      text = decoder.decode(bytes.subarray(at, at + sliceBytes), {
        stream: at + sliceBytes < bytes.length,
      });
    } catch {
      throw damaged(`Part ${part} of the workbook holds bytes that are not ${encoding} text`);
    }
    yield text;
  }
}

function unsafe(part: string, what: string): WorkbookRefused {
  return new WorkbookRefused(
    "workbook-unsafe",
    `Part ${part} of the workbook ${what}. No spreadsheet program writes such a file: ask the sender how it was made, and save it again as .xlsx.`,
  );
}
