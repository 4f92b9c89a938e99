import { strFromU8, strToU8 } from "fflate";
import type { Value } from "../../formula/value.js";
import type { Model } from "../../template/model.js";
import type { Identity } from "./identity.js";
import { typeface } from "./look.js";

/** What a file manager shows of a workbook. */
export interface Document {
  readonly title: string;
  readonly company: string;
  readonly creator: string;
  readonly lastModifiedBy: string;
}

/** Whom each workbook names as its writer. */
export const program = "rillbook";

/** The time that each workbook bears, since equal content must give equal bytes. */
export const undated = new Date(Date.UTC(2000, 0, 1));
const workbookPart = "xl/workbook.xml";

/** The title of the job, else of the template, and the contractor, where the template names them. */
export function documentOf(model: Model, values: readonly Value[], { job }: Identity): Document {
  const text = (name: string | undefined): string => {
    const cell = name === undefined ? undefined : model.byId.get(name);
    const value = cell === undefined ? null : values[cell.index];
    return typeof value === "string" ? value : "";
  };
  const { roles, title } = model.template;
  const named = text(roles?.title) || title;
  return {
    title: `${named}, job ${job}`,
    company: text(roles?.agreed?.contractor),
    creator: program,
    lastModifiedBy: program,
  };
}

/**
 * Names the program that wrote the file, and gives it a theme. The writer beneath says the name and
 * version of another program; programs that know it rely on stored results instead of calculating.
 */
export function signProgram(parts: Record<string, Uint8Array>): void {
  const path = "docProps/app.xml";
  const part = parts[path];
  if (part === undefined) throw new Error(`The written workbook has no part ${path}.`);
  const xml = strFromU8(part)
    .replace(/<Application>[^<]*<\/Application>/, `<Application>${program}</Application>`)
    .replace(/<AppVersion>[^<]*<\/AppVersion>/, "");
  parts[path] = strToU8(xml);
  const workbook = strFromU8(parts[workbookPart] as Uint8Array)
    .replace(/<fileVersion [^>]*\/>/, `<fileVersion appName="${program}"/>`)
    .replace(/ defaultThemeVersion="\d+"/, "");
  parts[workbookPart] = strToU8(workbook);
  parts["xl/theme/theme1.xml"] = strToU8(themeXml());
}

/** Ink and paper, a deep green and a mist, then six that differ in lightness, to be told apart in gray. */
const colors: readonly [tag: string, rgb: string][] = [
  ["dk1", "1F2A2E"],
  ["lt1", "FFFFFF"],
  ["dk2", "2F5D62"],
  ["lt2", "E6EEEE"],
  ["accent1", "2F5D62"],
  ["accent2", "9C6B1F"],
  ["accent3", "7A3B5E"],
  ["accent4", "6F9EA3"],
  ["accent5", "D6B36A"],
  ["accent6", "4A4A4A"],
  ["hlink", "1F5F8B"],
  ["folHlink", "6B4C7A"],
];

/** A theme of our own colors and typeface (ISO/IEC 29500-1, 20.1.6.9); its effects are plain. */
export function themeXml(): string {
  const scheme = colors
    .map(([tag, rgb]) => `<a:${tag}><a:srgbClr val="${rgb}"/></a:${tag}>`)
    .join("");
  const font = `<a:latin typeface="${typeface}"/><a:ea typeface=""/><a:cs typeface=""/>`;
  const fill = `<a:solidFill><a:schemeClr val="phClr"/></a:solidFill>`;
  const line = `<a:ln w="9525"><a:solidFill><a:schemeClr val="phClr"/></a:solidFill></a:ln>`;
  const effect = "<a:effectStyle><a:effectLst/></a:effectStyle>";
  const thrice = (one: string) => one.repeat(3);
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n` +
    `<a:theme xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" name="rillbook"><a:themeElements>` +
    `<a:clrScheme name="rillbook">${scheme}</a:clrScheme>` +
    `<a:fontScheme name="rillbook"><a:majorFont>${font}</a:majorFont><a:minorFont>${font}</a:minorFont></a:fontScheme>` +
    `<a:fmtScheme name="rillbook"><a:fillStyleLst>${thrice(fill)}</a:fillStyleLst><a:lnStyleLst>${thrice(line)}</a:lnStyleLst>` +
    `<a:effectStyleLst>${thrice(effect)}</a:effectStyleLst><a:bgFillStyleLst>${thrice(fill)}</a:bgFillStyleLst></a:fmtScheme>` +
    `</a:themeElements></a:theme>`
  );
}
