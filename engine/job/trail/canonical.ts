import { createHash } from "node:crypto";

/**
 * The one way to write a value as JSON: keys in the order of their characters, no spaces,
 * numbers as JavaScript prints them (after RFC 8785, JSON Canonicalization Scheme).
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(",")}]`;
  if (typeof value === "object" && value !== null) {
    const entries = Object.entries(value).filter(([, one]) => one !== undefined);
    entries.sort(([a], [b]) => (a < b ? -1 : 1));
    return `{${entries.map(([key, one]) => `${JSON.stringify(key)}:${canonicalJson(one)}`).join(",")}}`;
  }
  return JSON.stringify(value);
}

/** SHA-256 of text, as 64 hexadecimal digits. */
export const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");
