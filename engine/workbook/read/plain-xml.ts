import type { SaxesAttributeNS } from "saxes";

/** What the elements of a plain XML text are told to, in order. */
export interface PlainVisitor {
  open(name: PlainName, attributes: Record<string, SaxesAttributeNS>, count: number): void;
  /** Is the text that comes next of use? It need not be told otherwise. */
  wants(): boolean;
  text(text: string): void;
  close(): void;
}

export interface PlainName {
  readonly name: string;
  readonly local: string;
  readonly uri: string;
}

const declaration =
  /^<\?xml version="1\.0"(?: encoding="(?:UTF-8|utf-8)")?(?: standalone="(?:yes|no)")? ?\?>/;
const name = "[A-Za-z_][\\w.-]*(?::[A-Za-z_][\\w.-]*)?";
const openTag = new RegExp(`<(${name})((?: +${name}="[^"<\\t\\n]*")*) *(/?)>`, "y");
const references = /&(?!(?:lt|gt|amp|quot|apos);)/;
const reference = /&#(?:x([0-9A-Fa-f]{1,6})|(\d{1,7}));/g;
/** What XML 1.0 does not allow as text: control characters, and two that are none. Surrogates come in pairs. */
const forbidden = /[^\t\n\r -\ufffd]/;

const xmlSpace = "http://www.w3.org/XML/1998/namespace";
const xmlnsSpace = "http://www.w3.org/2000/xmlns/";
const mostDeep = 40;
const mostAttributes = 200;
/** Beyond this a text is left to the full parser, which holds nothing. */
const mostElements = 100_000;

/** A piece of the text, in order: an element with its attributes, a text as written, or an end. */
type XmlPiece = { readonly name: PlainName; readonly read: ReadAttributes } | string | undefined;

/**
 * Reads XML as spreadsheet programs write it, several times as fast as a full parser: no
 * comments, CDATA, processing instructions or document type, namespaces declared on the root
 * only, attributes in double quotes. It is gone through to its end before anyone is told. The
 * answer is false, and nothing was told, for every text that is not plain or not well-formed:
 * a full parser must then decide what it is.
 */
export function walkPlainXml(given: string, visitor: PlainVisitor): boolean {
  if (forbidden.test(given)) return false;
  const found = scan(given.includes("\r") ? given.replace(/\r\n?/g, "\n") : given);
  if (found === undefined) return false;
  for (const one of found) {
    if (one === undefined) visitor.close();
    else if (typeof one !== "string") visitor.open(one.name, one.read.attributes, one.read.count);
    else if (visitor.wants()) visitor.text(decoded(one));
  }
  return true;
}

function scan(text: string): XmlPiece[] | undefined {
  let at = declaration.exec(text)?.[0].length ?? 0;
  const found: XmlPiece[] = [];
  const open: string[] = [];
  let elements = 0;
  let spaces: ReadonlyMap<string, string> | undefined;
  const names = new Map<string, PlainName | undefined>();
  // what is plain as a whole is so piece by piece: no reference goes over the end of one
  const isPlainHere = isPlain(text) ? () => true : isPlain;
  for (;;) {
    const next = text.indexOf("<", at);
    const end = next < 0 ? text.length : next;
    if (end > at) {
      const raw = text.slice(at, end);
      if (open.length === 0 ? /[^ \n\t]/.test(raw) : !isPlainHere(raw)) return undefined;
      if (open.length > 0) found.push(raw);
    }
    if (next < 0) return open.length === 0 && spaces !== undefined ? found : undefined;
    if (text.charCodeAt(next + 1) === slash) {
      const close = text.indexOf(">", next);
      if (close < 0 || text.slice(next + 2, close) !== open.pop()) return undefined;
      found.push(undefined);
      at = close + 1;
      continue;
    }
    openTag.lastIndex = next;
    const tag = openTag.exec(text);
    if (tag === null) return undefined;
    const [whole, written = "", attributes = "", closed] = tag;
    at = next + whole.length;
    const isRoot = open.length === 0;
    if (isRoot && spaces !== undefined) return undefined;
    spaces ??= spacesOf(attributes);
    if (!names.has(written)) names.set(written, resolved(written, spaces));
    const name = names.get(written);
    const read = attributesOf(attributes, spaces, isRoot, isPlainHere);
    elements += 1;
    if (name === undefined || read === undefined) return undefined;
    if (open.length >= mostDeep || elements > mostElements) return undefined;
    found.push({ name, read });
    if (closed === "") open.push(written);
    else found.push(undefined);
  }
}

const slash = 47;

/** The namespaces that the root declares, by prefix. */
function spacesOf(written: string): Map<string, string> {
  const spaces = new Map([
    ["", ""],
    ["xml", xmlSpace],
  ]);
  for (const [key, value] of each(written)) {
    if (key === "xmlns") spaces.set("", value);
    else if (key.startsWith("xmlns:")) spaces.set(key.slice(6), value);
  }
  return spaces;
}

/** Names and values of attributes whose shape is known to be right. */
function each(written: string): [string, string][] {
  const found: [string, string][] = [];
  let at = 0;
  for (let equals = written.indexOf("="); equals >= 0; equals = written.indexOf("=", at)) {
    const end = written.indexOf('"', equals + 2);
    found.push([written.slice(at, equals).trim(), written.slice(equals + 2, end)]);
    at = end + 1;
  }
  return found;
}

interface ReadAttributes {
  readonly attributes: Record<string, SaxesAttributeNS>;
  readonly count: number;
}

const none: ReadAttributes = { attributes: Object.create(null), count: 0 };

/** Undefined where they are not plain: namespaces declared late, doubled names, strange entities. */
function attributesOf(
  written: string,
  spaces: ReadonlyMap<string, string>,
  isRoot: boolean,
  isPlainHere: (raw: string) => boolean,
): ReadAttributes | undefined {
  if (written === "") return none;
  const attributes: Record<string, SaxesAttributeNS> = Object.create(null);
  let prefixed: Set<string> | undefined;
  let count = 0;
  let at = 0;
  for (let equals = written.indexOf("="); equals >= 0; equals = written.indexOf("=", at)) {
    const end = written.indexOf('"', equals + 2);
    const name = written.slice(at, equals).trimStart();
    const raw = written.slice(equals + 2, end);
    at = end + 1;
    count += 1;
    if (name in attributes || !isPlainHere(raw) || count > mostAttributes) return undefined;
    const value = decoded(raw);
    const colon = name.indexOf(":");
    if (colon < 0 && name !== "xmlns") {
      attributes[name] = { name, prefix: "", local: name, uri: "", value };
      continue;
    }
    const prefix = colon < 0 ? "" : name.slice(0, colon);
    const local = colon < 0 ? name : name.slice(colon + 1);
    const declares = name === "xmlns" || prefix === "xmlns";
    if (declares && !(isRoot && mayDeclare(local, value))) return undefined;
    const uri = declares ? xmlnsSpace : spaces.get(prefix);
    // two prefixes may stand for one namespace
    if (uri === undefined || (!declares && prefixed?.has(local))) return undefined;
    if (!declares) {
      prefixed ??= new Set();
      prefixed.add(local);
    }
    attributes[name] = { name, prefix, local, uri, value };
  }
  return { attributes, count };
}

/** What is reserved, or takes a namespace away, is left to the full parser. */
const mayDeclare = (local: string, value: string): boolean =>
  value !== "" && value !== xmlSpace && value !== xmlnsSpace && local !== "xml";

function resolved(written: string, spaces: ReadonlyMap<string, string>): PlainName | undefined {
  const colon = written.indexOf(":");
  const uri = spaces.get(colon < 0 ? "" : written.slice(0, colon));
  if (uri === undefined || written.startsWith("xml:") || written.startsWith("xmlns:")) {
    return undefined;
  }
  return { name: written, local: colon < 0 ? written : written.slice(colon + 1), uri };
}

/** Is a text well-formed, with references to characters only? */
function isPlain(raw: string): boolean {
  if (raw.includes("]]>")) return false;
  if (!raw.includes("&") || !references.test(raw)) return true;
  return !references.test(
    raw.replace(reference, (written) => (codeOf(written) < 0 ? written : " ")),
  );
}

/** The character that `&#10;` or `&#xA;` stands for, as its number; below 0 where XML has none. */
function codeOf(written: string): number {
  const digits = written.slice(2, -1);
  const code = digits.startsWith("x") ? Number.parseInt(digits.slice(1), 16) : Number(digits);
  if (code > 0x10ffff || (code >= 0xd800 && code <= 0xdfff)) return -1;
  return forbidden.test(String.fromCodePoint(code)) ? -1 : code;
}

/** A plain text with its references put in. */
function decoded(raw: string): string {
  if (!raw.includes("&")) return raw;
  return raw
    .replace(reference, (written) => {
      const character = String.fromCodePoint(codeOf(written));
      return character === "&" ? "&amp;" : character;
    })
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&apos;", "'")
    .replaceAll("&amp;", "&");
}
