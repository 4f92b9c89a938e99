import type { SaxesAttributeNS } from "saxes";
import { charactersOf, hasForbidden } from "./byte-text.js";

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
/** A name with its prefix, if it has one. */
const properName = /^[A-Za-z_][\w.-]*(?::[A-Za-z_][\w.-]*)?$/;
const references = /&(?!(?:lt|gt|amp|quot|apos);)/;
const reference = /&#(?:x([0-9A-Fa-f]{1,6})|(\d{1,7}));/g;
/** Has a text of bytes no character that XML forbids, and line feeds alone as ends of lines? */
export const isCleanText = (text: string): boolean => !text.includes("\r") && !hasForbidden(text);

/** What XML 1.0 does not allow as a character that a reference stands for. */
const forbidden = /[^\t\n\r -\ufffd]/;

const xmlSpace = "http://www.w3.org/XML/1998/namespace";
const xmlnsSpace = "http://www.w3.org/2000/xmlns/";
const mostDeep = 40;
const mostAttributes = 200;
/** Beyond this a text is left to the full parser, which holds nothing. */
const mostElements = 100_000;

/** An element as it opens. */
interface Opened {
  readonly name: PlainName;
  readonly attributes: Record<string, SaxesAttributeNS>;
  readonly count: number;
}

/** A piece of the text, in order: an element, a text as written, or an end. */
type XmlPiece = Opened | string | undefined;

/**
 * Reads XML as spreadsheet programs write it, several times as fast as a full parser: no
 * comments, CDATA, processing instructions or document type, namespaces declared on the root
 * only, attributes in double quotes. It is gone through to its end before anyone is told. The
 * answer is false, and nothing was told, for every text that is not plain or not well-formed:
 * a full parser must then decide what it is.
 * @param given each of whose characters stands for a byte of UTF-8
 */
export function walkPlainXml(given: string, visitor: PlainVisitor): boolean {
  if (hasForbidden(given)) return false;
  const found = scan(given.includes("\r") ? given.replace(/\r\n?/g, "\n") : given);
  if (found === undefined) return false;
  for (const one of found) {
    if (one === undefined) visitor.close();
    else if (typeof one !== "string") visitor.open(one.name, one.attributes, one.count);
    else if (visitor.wants()) visitor.text(decoded(one));
  }
  return true;
}

function scan(text: string): XmlPiece[] | undefined {
  let at = declaration.exec(text)?.[0].length ?? 0;
  const found: XmlPiece[] = [];
  const open: string[] = [];
  let elements = 0;
  let names: Names | undefined;
  // names and values of the element that is read, in turn
  const written: string[] = [];
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
    if (next < 0) return open.length === 0 && names !== undefined ? found : undefined;
    if (text.charCodeAt(next + 1) === slash) {
      const close = text.indexOf(">", next);
      if (close < 0 || text.slice(next + 2, close) !== open.pop()) return undefined;
      found.push(undefined);
      at = close + 1;
      continue;
    }
    const nameEnd = wordEnd(text, next + 1);
    at = attributesEnd(text, nameEnd, written);
    if (at < 0) return undefined;
    const closed = text.charCodeAt(at) === slash;
    if (closed) at += 1;
    if (text.charCodeAt(at) !== greater) return undefined;
    at += 1;
    const isRoot = open.length === 0;
    if (isRoot && names !== undefined) return undefined;
    names ??= new Names(written);
    const tag = text.slice(next + 1, nameEnd);
    const name = names.ofElement(tag);
    const attributes = attributesOf(written, names, isRoot, isPlainHere);
    elements += 1;
    if (name === undefined || attributes === undefined) return undefined;
    if (open.length >= mostDeep || elements > mostElements) return undefined;
    found.push({ name, attributes, count: written.length / 2 });
    if (closed) found.push(undefined);
    else open.push(tag);
  }
}

const [slash, greater, less, quote, equals, space, tab, newLine] = [...'/><"= \t\n'].map((one) =>
  one.charCodeAt(0),
);

/** The characters that a name may have, by their codes. */
const inWord = Uint8Array.from({ length: 128 }, (_, code) =>
  /[\w.:-]/.test(String.fromCharCode(code)) ? 1 : 0,
);

function wordEnd(text: string, from: number): number {
  let at = from;
  while (inWord[text.charCodeAt(at)] === 1) at++;
  return at;
}

/**
 * Where the attributes of an element end, with their names and values as written put into the list; below 0
 * where they are not plain.
 */
function attributesEnd(text: string, from: number, list: string[]): number {
  list.length = 0;
  let at = from;
  for (;;) {
    const before = at;
    while (text.charCodeAt(at) === space) at++;
    const code = text.charCodeAt(at);
    if (code === greater || code === slash) return at;
    const end = wordEnd(text, at);
    const known = at > before && text.charCodeAt(end) === equals;
    if (!known || text.charCodeAt(end + 1) !== quote || list.length >= 2 * mostAttributes)
      return -1;
    const close = valueEnd(text, end + 2);
    if (close < 0) return -1;
    list.push(text.slice(at, end), text.slice(end + 2, close));
    at = close + 1;
  }
}

/** The place of the quote after a value; below 0 where something stands in it that a full parser must look at. */
function valueEnd(text: string, from: number): number {
  for (let at = from; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === quote) return at;
    if (code === less || code === tab || code === newLine) return -1;
  }
  return -1;
}

/** The name of an attribute, with what its prefix stands for. */
interface AttributeName {
  readonly prefix: string;
  readonly local: string;
  readonly uri: string;
  readonly declares: boolean;
}

/** The names of a text, resolved once each by the namespaces that its root declares. */
class Names {
  readonly #spaces = new Map([
    ["", ""],
    ["xml", xmlSpace],
  ]);
  readonly #elements = new Map<string, PlainName | undefined>();
  readonly #attributes = new Map<string, AttributeName | undefined>();

  /** @param root names and values of the root's attributes in turn */
  constructor(root: readonly string[]) {
    for (let i = 0; i < root.length; i += 2) {
      const [name, value] = [root[i] as string, root[i + 1] as string];
      if (name === "xmlns") this.#spaces.set("", decoded(value));
      else if (name.startsWith("xmlns:")) this.#spaces.set(name.slice(6), decoded(value));
    }
  }

  /** Undefined for what is no name, or has a prefix that nobody declared. */
  ofElement(written: string): PlainName | undefined {
    const known = this.#elements.get(written);
    if (known !== undefined || this.#elements.has(written)) return known;
    const made = this.#resolved(written);
    this.#elements.set(written, made);
    return made;
  }

  ofAttribute(written: string): AttributeName | undefined {
    const known = this.#attributes.get(written);
    if (known !== undefined || this.#attributes.has(written)) return known;
    const made = this.#attribute(written);
    this.#attributes.set(written, made);
    return made;
  }

  #resolved(written: string): PlainName | undefined {
    const colon = written.indexOf(":");
    const uri = this.#spaces.get(colon < 0 ? "" : written.slice(0, colon));
    if (uri === undefined || !properName.test(written)) return undefined;
    if (written.startsWith("xml:") || written.startsWith("xmlns:")) return undefined;
    return { name: written, local: colon < 0 ? written : written.slice(colon + 1), uri };
  }

  #attribute(written: string): AttributeName | undefined {
    if (!properName.test(written)) return undefined;
    const colon = written.indexOf(":");
    const prefix = colon < 0 ? "" : written.slice(0, colon);
    const local = colon < 0 ? written : written.slice(colon + 1);
    const declares = written === "xmlns" || prefix === "xmlns";
    if (declares) return { prefix, local, uri: xmlnsSpace, declares };
    // without a prefix an attribute belongs to its element alone
    const uri = colon < 0 ? "" : this.#spaces.get(prefix);
    return uri === undefined ? undefined : { prefix, local, uri, declares };
  }
}

/** Attributes by name, with nothing inherited. Engines keep such an object small, which `Object.create(null)` is not. */
class Bare {
  [name: string]: SaxesAttributeNS;
}
Reflect.deleteProperty(Bare.prototype, "constructor");
Object.setPrototypeOf(Bare.prototype, null);

const none = new Bare();

/** Undefined where they are not plain: namespaces declared late, doubled names, strange entities. */
function attributesOf(
  written: readonly string[],
  names: Names,
  isRoot: boolean,
  isPlainHere: (raw: string) => boolean,
): Record<string, SaxesAttributeNS> | undefined {
  if (written.length === 0) return none;
  const attributes = new Bare();
  let prefixed: Set<string> | undefined;
  for (let i = 0; i < written.length; i += 2) {
    const [name, raw] = [written[i] as string, written[i + 1] as string];
    const known = names.ofAttribute(name);
    if (known === undefined || name in attributes || !isPlainHere(raw)) return undefined;
    const { prefix, local, uri, declares } = known;
    const value = decoded(raw);
    if (declares && !(isRoot && mayDeclare(local, value))) return undefined;
    if (prefix !== "" && !declares) {
      // two prefixes may stand for one namespace
      if (prefixed?.has(local)) return undefined;
      prefixed ??= new Set();
      prefixed.add(local);
    }
    attributes[name] = { name, prefix, local, uri, value };
  }
  return attributes;
}

/** What is reserved, or takes a namespace away, is left to the full parser. */
const mayDeclare = (local: string, value: string): boolean =>
  value !== "" && value !== xmlSpace && value !== xmlnsSpace && local !== "xml";

/** Is a text well-formed, with references to characters only? */
export function isPlain(raw: string): boolean {
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

/** A plain text of bytes in characters, with its references put in. */
export function decoded(raw: string): string {
  const text = charactersOf(raw);
  if (!text.includes("&")) return text;
  return (text.includes("&#") ? text.replace(reference, characterOf) : text)
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&apos;", "'")
    .replaceAll("&amp;", "&");
}

function characterOf(written: string): string {
  const character = String.fromCodePoint(codeOf(written));
  return character === "&" ? "&amp;" : character;
}
