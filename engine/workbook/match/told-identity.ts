import type { WorkbookContent } from "../read/content.js";
import { identityOfWorkbook, type WorkbookIdentity } from "./identity.js";

/** What a workbook says of itself, and whether its custom properties are gone. */
export interface ToldIdentity {
  readonly identity: WorkbookIdentity;
  readonly lost: boolean;
}

/**
 * The identity of a workbook. Where all its properties are gone, which some programs drop as they save, it is
 * read from the first sheet, which says template, units and office book in words; marks cannot be told from there.
 */
export function toldIdentity(content: WorkbookContent): ToldIdentity {
  const identity = identityOfWorkbook(content);
  if (Object.keys(identity).length > 0) return { identity, lost: false };
  const written = fromFirstSheet(content);
  return { identity: written, lost: written.template !== undefined };
}

function fromFirstSheet({ sheets }: WorkbookContent): WorkbookIdentity {
  const cells = sheets[0]?.cells ?? new Map();
  const textAt = (address: string): string => {
    const value = cells.get(address)?.value;
    return typeof value === "string" ? value : "";
  };
  const beside = new Map<string, string>();
  for (const [address, { value }] of cells) {
    if (address.startsWith("A") && typeof value === "string") {
      // the label of a line takes one column, or two
      const [near, far] = ["B", "C"].map((column) => textAt(address.replace("A", column)));
      beside.set(value, near || far || "");
    }
  }
  const made = /^(.{1,100}), version (\d{1,9}), (US|SI)\b/.exec(beside.get("Template") ?? "");
  if (made === null) return {};
  const [, template = "", version, units = ""] = made;
  const book = /^(.*), as of (.*)$/.exec(beside.get("Office book") ?? "");
  // an older workbook goes on in the same cell, on how to use the sheet
  const job = /^(?:Job|.{1,200}?, job) (.{1,300}?)\.(?: Every figure.*)?$/.exec(textAt("A2"))?.[1];
  const about = beside.get("About this job");
  return {
    template,
    version: Number(version),
    units: units.toLowerCase(),
    ...(job === undefined ? {} : { job }),
    ...(book === null ? {} : { book: book[1] ?? "", bookAsOf: book[2] ?? "" }),
    ...(about === undefined ? {} : { about }),
  };
}
