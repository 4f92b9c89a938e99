import { aboutSheet } from "../book/from-xlsx.js";
import { bookProperty } from "../output/kind.js";
import { identityProperties } from "../workbook/match/identity.js";
import { readWorkbook } from "../workbook/read/read.js";

/** Is a file that is no job an office book, as one may lie beside the jobs? */
export function isOfficeBook(bytes: Buffer, workbook: boolean): boolean {
  try {
    return workbook ? isBookWorkbook(bytes) : isBookJson(JSON.parse(bytes.toString("utf8")));
  } catch {
    // why it cannot be read is told as the result of the file
    return false;
  }
}

function isBookJson(content: unknown): boolean {
  if (typeof content !== "object" || content === null) return false;
  const { tables, asOf } = content as Record<string, unknown>;
  return (
    typeof tables === "object" && tables !== null && asOf !== undefined && !("rillbook" in content)
  );
}

/** By its property; other programs drop that one, but keep the sheet. */
function isBookWorkbook(bytes: Buffer): boolean {
  const { properties, sheets } = readWorkbook(bytes, { sheets: () => false });
  const says = [...properties.custom.keys()].map((name) => name.toLowerCase());
  return (
    says.includes(bookProperty) ||
    (!says.includes(identityProperties.template) && sheets.some(({ name }) => name === aboutSheet))
  );
}
