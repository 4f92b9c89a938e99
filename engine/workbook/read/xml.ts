import { type SaxesAttributeNS, SaxesParser } from "saxes";
import { byteText } from "./byte-text.js";
import type { KeptParts } from "./kept-parts.js";
import type { Budget } from "./limits.js";
import { isCleanText, type PlainName, type PlainVisitor, walkPlainXml } from "./plain-xml.js";
import { damaged, WorkbookRefused } from "./refused.js";

export type Attributes = Readonly<Record<string, SaxesAttributeNS>>;

/** What a reader of one part wants to hear. Paths are local names from the root, as in "sst/si/t". */
export interface XmlVisitor {
  /** Vocabularies that count. An element of another one is passed over with all that is in it. */
  readonly namespaces: ReadonlySet<string>;
  /** Local name of the root element. */
  readonly root: string;
  /** Paths whose text is of no use; it may be left out. */
  readonly silent?: ReadonlySet<string>;
  open?(path: string, attributes: Attributes): void;
  text?(path: string, text: string): void;
  close?(path: string): void;
  /** What many elements of one kind go by at once, where they are written plainly. */
  readonly bulk?: Bulk | undefined;
}

/** Reads all that stands within one element at a go, and not element by element. */
export interface Bulk {
  /** The element that holds it. */
  readonly path: string;
  /**
   * Takes it out of a text of bytes that has no characters forbidden in XML and line feeds alone. Undefined for whatever is not
   * written as it is known to be: that is for the reader of any XML to judge.
   */
  cut(text: string): Cut | undefined;
  /** Where hearing the text around it only makes a state: what was made of the same text stands for hearing it again. */
  readonly around?: Around | undefined;
}

export interface Around {
  state(): object;
  take(state: object): void;
}

/** What hearing the text around a bulk came to. */
interface Heard {
  readonly markup: number;
  readonly state: object;
}

export interface Cut {
  /** The text with nothing within the element. */
  readonly outside: string;
  /** Elements and attributes that were taken out. */
  readonly markup: number;
  /** Tells them, as the element that held them has opened. */
  readonly tell: () => void;
}

/** The parts of a package, as far as one needs them to read one of them through. */
export interface Parts {
  walk(part: string, visitor: XmlVisitor): void;
}

const deepest = 40;
const mostAttributes = 200;
const sliceBytes = 1 << 16;

/**
 * Reads one XML part from beginning to end. Throws WorkbookRefused for XML that is not well-formed, for
 * a document type or an entity of its own, for another encoding than UTF-8 or UTF-16, and for
 * nesting, attributes and elements past all use.
 */
export function walkXml(
  bytes: Uint8Array,
  part: string,
  budget: Budget,
  visitor: XmlVisitor,
  kept?: KeptParts,
) {
  const paths = new Paths(part, visitor);
  const told: PlainVisitor = {
    open: (name, attributes, count) => {
      budget.spend("markup", 1 + count, "The workbook");
      paths.open(name, attributes);
    },
    wants: () => paths.wants(),
    text: (text) => paths.text(text),
    close: () => paths.close(),
  };
  const text = byteText(bytes);
  if (text !== undefined) {
    if (visitor.bulk !== undefined && isCleanText(text)) {
      const cut = visitor.bulk.cut(text);
      const isHeard = cut && walkAround(cut, visitor.bulk, { part, budget, paths, told, kept });
      if (isHeard) return;
    }
    if (walkPlainXml(text, told)) return;
  }
  walkAnyXml(bytes, part, budget, paths);
}

interface Walk {
  readonly part: string;
  readonly budget: Budget;
  readonly paths: Paths;
  readonly told: PlainVisitor;
  readonly kept: KeptParts | undefined;
}

/** Tells what was taken out of a text, and what is left of it unless that was heard before; false where that is not plain. */
function walkAround(
  { outside, markup, tell }: Cut,
  { path, around }: Bulk,
  { part, budget, paths, told, kept }: Walk,
): boolean {
  const known = around && kept?.find<Heard>(part, outside);
  if (known !== undefined) {
    budget.spend("markup", known.markup + markup, "The workbook");
    around?.take(known.state);
    tell();
    return true;
  }
  let heard = 0;
  const open: PlainVisitor["open"] = (name, attributes, count) => {
    heard += 1 + count;
    told.open(name, attributes, count);
    if (paths.path !== path) return;
    budget.spend("markup", markup, "The workbook");
    tell();
  };
  if (!walkPlainXml(outside, { ...told, open })) return false;
  if (around !== undefined) kept?.keep(part, outside, { markup: heard, state: around.state() });
  return true;
}

/** Tells a visitor paths in place of names, and passes over what does not count. */
class Paths {
  /** The open elements; undefined in a vocabulary that does not count. */
  readonly #open: (Place | undefined)[] = [];

  constructor(
    private readonly part: string,
    private readonly visitor: XmlVisitor,
  ) {}

  get path(): string | undefined {
    return this.#open[this.#open.length - 1]?.path;
  }

  get depth(): number {
    return this.#open.length;
  }

  open({ name, local, uri }: PlainName, attributes: Attributes): void {
    const counts = this.visitor.namespaces.has(uri);
    const { root } = this.visitor;
    if (this.#open.length === 0) {
      if (!counts || local !== root) {
        throw damaged(`Part ${this.part} of the workbook has <${name}> in place of ${root}`);
      }
      this.#open.push({ path: root, within: new Map() });
    } else {
      const parent = this.#open[this.#open.length - 1];
      this.#open.push(counts && parent !== undefined ? placeIn(parent, local) : undefined);
    }
    const place = this.#open[this.#open.length - 1];
    if (place !== undefined) this.visitor.open?.(place.path, attributes);
  }

  wants(): boolean {
    const path = this.#open[this.#open.length - 1]?.path;
    if (path === undefined || this.visitor.text === undefined) return false;
    return !this.visitor.silent?.has(path);
  }

  text(text: string): void {
    const place = this.#open[this.#open.length - 1];
    if (place !== undefined) this.visitor.text?.(place.path, text);
  }

  close(): void {
    const place = this.#open.pop();
    if (place !== undefined) this.visitor.close?.(place.path);
  }
}

/** A path, and those that were met within it. */
interface Place {
  readonly path: string;
  readonly within: Map<string, Place>;
}

function placeIn({ path, within }: Place, local: string): Place {
  const known = within.get(local);
  if (known !== undefined) return known;
  const made = { path: single(`${path}/${local}`), within: new Map() };
  within.set(local, made);
  return made;
}

/** The one copy that engines keep of the names of properties: comparing two of them is comparing two references. */
const single = (text: string): string => Object.keys({ [text]: 0 })[0] as string;

function walkAnyXml(bytes: Uint8Array, part: string, budget: Budget, paths: Paths): void {
  const parser = new SaxesParser({ xmlns: true, position: false });
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
    if (paths.depth >= deepest) throw unsafe(part, `is nested over ${deepest} levels deep`);
  });
  parser.on("attribute", () => {
    if (++attributes > mostAttributes) {
      throw unsafe(part, `has over ${mostAttributes} attributes on one element`);
    }
  });
  parser.on("opentag", (tag) => {
    budget.spend("markup", 1 + attributes, "The workbook");
    paths.open(tag, tag.attributes);
  });
  parser.on("closetag", () => paths.close());
  parser.on("text", (text) => paths.text(text));
  parser.on("cdata", (text) => paths.text(text));
  for (const text of decoded(bytes, part)) parser.write(text);
  parser.close();
}

type Decoder = InstanceType<typeof TextDecoder>;

function* decoded(bytes: Uint8Array, part: string): Generator<string> {
  const decoder = decoderFor(bytes);
  for (let at = 0; at < bytes.length || at === 0; at += sliceBytes) {
    const slice = bytes.subarray(at, at + sliceBytes);
    yield decodedBy(decoder, slice, part, at + sliceBytes < bytes.length);
  }
}

function decoderFor(bytes: Uint8Array): Decoder {
  const encoding =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? "utf-16le"
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? "utf-16be"
        : "utf-8";
  return new TextDecoder(encoding, { fatal: true });
}

function decodedBy(decoder: Decoder, bytes: Uint8Array, part: string, stream: boolean): string {
  try {
    return decoder.decode(bytes, { stream });
  } catch {
    throw damaged(`Part ${part} of the workbook holds bytes that are not ${decoder.encoding} text`);
  }
}

function unsafe(part: string, what: string): WorkbookRefused {
  return new WorkbookRefused(
    "workbook-unsafe",
    `Part ${part} of the workbook ${what}. No spreadsheet program writes such a file: ask the sender how it was made, and save it again as .xlsx.`,
  );
}
