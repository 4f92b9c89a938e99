import type { Package } from "../package.js";
import type { Relationship } from "../relationships.js";
import { readTheme } from "./colors.js";
import type { SheetLook, WorkbookLook } from "./content.js";
import { readDrawn } from "./drawings.js";
import type { SheetListener } from "./sheet.js";
import { readStyles } from "./styles.js";

/** Kinds of parts that stand behind what a sheet shows, and are looked at themselves. */
const lookedAt = new Set(["drawing", "comments", "vmlDrawing"]);

/** How a sheet appears, after its part was read under the listener. */
export function readSheetLook(from: Package, part: string, listener: SheetListener): SheetLook {
  const links = from.relationshipsOf(part);
  const { boxes, ...over } = readDrawn(from, links);
  const heard = listener.heard();
  const parts = [
    ...heard.parts,
    ...boxes,
    ...links.map(({ type }) => type).filter((type) => !lookedAt.has(type)),
  ];
  return { ...heard, ...over, parts: [...new Set(parts)] };
}

/** Styles, settings of calculation, and the kinds of parts that the workbook points to. */
export function readLook(
  from: Package,
  main: string,
  settings: ReadonlyMap<string, string>,
  packageLinks: readonly Relationship[],
  links: readonly Relationship[],
): WorkbookLook {
  const partOf = (kind: string) => links.find(({ type }) => type === kind)?.target;
  const styles = partOf("styles");
  const theme = readTheme(from, partOf("theme"));
  return {
    styles:
      styles === undefined || !from.has(styles)
        ? { cells: [], rules: [] }
        : readStyles(from, styles, theme),
    settings,
    parts: [...new Set([...packageLinks, ...links].map(({ type }) => type))],
    application: applicationOf(from, packageLinks),
    macros: /macroEnabled/i.test(from.contentType(main) ?? ""),
  };
}

function applicationOf(from: Package, links: readonly Relationship[]): string {
  const part = links.find(({ type }) => type === "extended-properties")?.target;
  if (part === undefined || !from.has(part)) return "";
  return /<Application>([^<]{0,100})/.exec(from.text(part))?.[1] ?? "";
}
