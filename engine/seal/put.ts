import { RillbookError } from "../errors.js";
import { readWorkbook } from "../workbook/read/read.js";
import { Archive } from "../workbook/write/archive.js";
import { escaped } from "../workbook/write/package.js";
import { propertiesOfSeal, type Seal } from "./seal.js";

const space = "http://schemas.openxmlformats.org/officeDocument/2006/custom-properties";
const types = "http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes";
/** The format id that the standard fixes for custom properties. */
const customFormat = "{D5CDD505-2E9C-101B-9397-08002B2CF9AE}";

/**
 * The workbook with a seal among its custom properties; an older one goes. All other parts stay byte for
 * byte. Throws RillbookError where the workbook cannot take it.
 * @param bytes a workbook that was read without refusal
 */
export function withSeal(bytes: Uint8Array, seal: Seal, file: string): Uint8Array {
  const parts = new Archive(bytes);
  const name = parts.names.find((one) => /^docProps\/custom\.xml$/i.test(one));
  if (name === undefined) throw notTaken(file);
  const properties = propertiesOfSeal(seal);
  parts.put(name, withProperties(parts.text(name), properties));
  const made = parts.packed();
  const { custom } = readWorkbook(made, { sheets: () => false }).properties;
  if (Object.entries(properties).some(([key, value]) => custom.get(key) !== value)) {
    throw notTaken(file);
  }
  return made;
}

/** Puts properties at the end of their list, in place of those of the same name, whatever its prefixes are. */
function withProperties(xml: string, properties: Readonly<Record<string, string>>): string {
  const names = Object.keys(properties).join("|");
  const own = new RegExp(
    `<((?:\\w+:)?property)\\b[^>]*\\bname="(?:${names})"[^>]*>[\\s\\S]*?</\\1>`,
    "gi",
  );
  const kept = xml.replace(own, "");
  const last = Math.max(
    1,
    ...[...kept.matchAll(/\bpid="(\d{1,9})"/g)].map(([, pid]) => Number(pid)),
  );
  const added = Object.entries(properties).map(
    ([name, value], i) =>
      `<property xmlns="${space}" xmlns:vt="${types}" fmtid="${customFormat}" pid="${last + 1 + i}" name="${escaped(name)}">` +
      `<vt:lpwstr>${escaped(value)}</vt:lpwstr></property>`,
  );
  return kept.replace(/<\/(?:\w+:)?Properties>\s*$/, (end) => added.join("") + end);
}

const notTaken = (file: string): RillbookError =>
  new RillbookError(
    "seal-not-taken",
    `${file} takes no seal: its custom properties are gone or written in a way that is not known. Write the bid again from the job record, and seal that.`,
  );
