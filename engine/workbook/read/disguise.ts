import { WorkbookRefused } from "./refused.js";

const oleHeader = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

/** Refuses a file that is not a zip archive, saying what it seems to be instead. */
export function refuseDisguise(bytes: Uint8Array): void {
  if (bytes.length === 0) {
    throw notWorkbook("The file is empty", "Copy it again, or save it again from the spreadsheet.");
  }
  if (startsWith(bytes, oleHeader)) throw refusedOle(bytes);
  if (startsWith(bytes, [0x50, 0x4b])) return;
  const start = Buffer.from(bytes.subarray(0, 512));
  const seems = /^(?:\ufeff)?\s*<(?:!doctype html|html|table)/i.test(start.toString("utf8"))
    ? "a web page"
    : start.toString("latin1").startsWith("%PDF")
      ? "a PDF"
      : start.includes(0)
        ? "something else"
        : "plain text, such as CSV";
  throw notWorkbook(`The file is ${seems}, not an .xlsx workbook`, saveAsXlsx);
}

export const saveAsXlsx =
  "Open it in a spreadsheet program and save it as a workbook of type .xlsx.";

export function notWorkbook(what: string, advice: string): WorkbookRefused {
  return new WorkbookRefused("workbook-kind", `${what}. ${advice}`);
}

/** Password-protected .xlsx files and old .xls files both come in an OLE container. */
function refusedOle(bytes: Uint8Array): WorkbookRefused {
  const mark = Buffer.from("EncryptedPackage", "utf16le");
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).includes(mark)
    ? new WorkbookRefused(
        "workbook-encrypted",
        "The workbook is locked with a password. Open it, take the password off and save it again.",
      )
    : notWorkbook("The file is an old .xls workbook, whatever its name ends in", saveAsXlsx);
}

function startsWith(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, at) => bytes[at] === byte);
}
