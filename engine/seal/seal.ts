import { type KeyObject, sign, verify } from "node:crypto";
import { canonicalJson } from "../job/trail/canonical.js";
import { fingerprintOf, keyOfLetters, lettersOf } from "./key.js";
import { type SectionName, type Sections, sectionNames } from "./sections.js";

/**
 * The custom properties that hold a seal: LibreOffice and Gnumeric keep them. Each value has fewer
 * than 255 characters, more than which some programs may cut off (from memory).
 */
export const sealProperties = { seal: "rillbook seal", sections: "rillbook sealed" } as const;

/** A seal as a workbook carries it. */
export interface Seal {
  /** UTC, by the clock of the machine that sealed. */
  readonly time: string;
  readonly sections: Sections;
  /** Absent from a seal without a key, which anybody can make anew. */
  readonly signed?: { readonly key: string; readonly signature: string };
}

const form = "rillbook-seal-1";
const time = String.raw`\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z`;
const written = new RegExp(`^${form} (${time})(?: ([\\w-]{43}) ([\\w-]{86}))?$`);
const digests = new RegExp(`^${sectionNames.map(() => "[\\w-]{43}").join("\\.")}$`);

/** What is signed. */
const message = (at: string, sections: Sections): Buffer =>
  Buffer.from(canonicalJson({ form, time: at, sections }), "utf8");

/** Seals digests at a time; with a key, signs them. */
export function sealed(sections: Sections, at: string, key?: KeyObject): Seal {
  if (key === undefined) return { time: at, sections };
  const signature = sign(null, message(at, sections), key).toString("base64url");
  return { time: at, sections, signed: { key: lettersOf(key), signature } };
}

/** The properties that hold a seal. */
export function propertiesOfSeal({ time: at, sections, signed }: Seal): Record<string, string> {
  const parts = [form, at, ...(signed === undefined ? [] : [signed.key, signed.signature])];
  return {
    [sealProperties.seal]: parts.join(" "),
    [sealProperties.sections]: sectionNames.map((name) => sections[name]).join("."),
  };
}

/** The seal of a workbook; undefined where it has none, "broken" where what it carries is none. */
export function sealIn(custom: ReadonlyMap<string, string>): Seal | "broken" | undefined {
  const properties = new Map([...custom].map(([name, value]) => [name.toLowerCase(), value]));
  const seal = properties.get(sealProperties.seal);
  const listed = properties.get(sealProperties.sections);
  if (seal === undefined && listed === undefined) return undefined;
  const [, at, key, signature] = written.exec(seal ?? "") ?? [];
  if (at === undefined || listed === undefined || !digests.test(listed)) return "broken";
  const parts = listed.split(".");
  const sections = Object.fromEntries(
    sectionNames.map((name, i) => [name, parts[i]]),
  ) as unknown as Sections;
  if (key === undefined || signature === undefined) return { time: at, sections };
  return { time: at, sections, signed: { key, signature } };
}

/** Does the signature hold, and by which key? Undefined where it does not. */
export function signerOf({ time: at, sections, signed }: Seal): string | undefined {
  if (signed === undefined) return undefined;
  const key = keyOfLetters(signed.key);
  if (key === undefined) return undefined;
  const signature = Buffer.from(signed.signature, "base64url");
  return verify(null, message(at, sections), key, signature) ? fingerprintOf(key) : undefined;
}

/** The sections in which a bid is no longer what was sealed. */
export const changedSections = (seal: Seal, now: Sections): SectionName[] =>
  sectionNames.filter((name) => seal.sections[name] !== now[name]);
