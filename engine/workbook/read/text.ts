/**
 * Undoes the escapes of ST_Xstring (ISO/IEC 29500-1 §22.9.2.19): "_x000D_" is a carriage return,
 * "_x005F_" an underscore.
 */
export function unescaped(text: string): string {
  if (!text.includes("_x")) return text;
  return text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) =>
    String.fromCharCode(Number.parseInt(code, 16)),
  );
}

/** The text of a <t> element: the spaces around it count only when xml:space says so. */
export function textOf(raw: string, space: string | undefined): string {
  if (space === "preserve") return unescaped(raw);
  let start = 0;
  let end = raw.length;
  while (start < end && isSpace(raw.charCodeAt(start))) start++;
  while (end > start && isSpace(raw.charCodeAt(end - 1))) end--;
  return unescaped(raw.slice(start, end));
}

function isSpace(code: number): boolean {
  return code === 32 || code === 9 || code === 10 || code === 13;
}

/** Reads an XML boolean; a missing one is false. Undefined for anything else. */
export function booleanOf(text: string | undefined): boolean | undefined {
  switch (text?.trim()) {
    case undefined:
    case "0":
    case "false":
      return false;
    case "1":
    case "true":
      return true;
    default:
      return undefined;
  }
}
