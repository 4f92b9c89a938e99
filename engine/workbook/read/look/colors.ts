import { drawing } from "../namespaces.js";
import type { Package } from "../package.js";
import type { Attributes } from "../xml.js";

/** The palette of ISO/IEC 29500-1 §18.8.27, entries 8 to 63; the first eight repeat the next. */
const indexed = (
  "000000 FFFFFF FF0000 00FF00 0000FF FFFF00 FF00FF 00FFFF 800000 008000 000080 808000 800080 008080 C0C0C0 808080 " +
  "9999FF 993366 FFFFCC CCFFFF 660066 FF8080 0066CC CCCCFF 000080 FF00FF FFFF00 00FFFF 800080 800000 008080 0000FF " +
  "00CCFF CCFFFF CCFFCC FFFF99 99CCFF FF99CC CC99FF FFCC99 3366FF 33CCCC 99CC00 FFCC00 FF9900 FF6600 666699 969696 " +
  "003366 339966 003300 333300 993300 993366 333399 333333"
).split(" ");

/** The order in which cells count the colours of a theme: the light one comes before the dark one. */
const themeOrder = [
  "lt1",
  "dk1",
  "lt2",
  "dk2",
  "accent1",
  "accent2",
  "accent3",
  "accent4",
  "accent5",
  "accent6",
  "hlink",
  "folHlink",
];

/** Reads the colours of the theme part, in the order in which cells count them. */
export function readTheme(from: Package, part: string | undefined): (string | undefined)[] {
  const found = new Map<string, string>();
  if (part === undefined || !from.has(part)) return ["FFFFFF", "000000"];
  from.walk(part, {
    namespaces: drawing,
    root: "theme",
    open(path, attributes) {
      const [, slot, kind] = /\/clrScheme\/(\w+)\/(srgbClr|sysClr)$/.exec(path) ?? [];
      if (slot === undefined || found.has(slot)) return;
      const value = kind === "sysClr" ? attributes.lastClr?.value : attributes.val?.value;
      if (value !== undefined) found.set(slot, value.toUpperCase());
    },
  });
  return themeOrder.map((slot) => found.get(slot));
}

/** The palette that a styles part puts in place of the standard's; empty where it has none. */
export const readPalette = (styles: string): string[] =>
  [...styles.matchAll(/<(?:\w+:)?rgbColor\s+rgb="(?:[0-9A-Fa-f]{2})?([0-9A-Fa-f]{6})"/g)]
    .slice(0, 64)
    .map(([, color = ""]) => color.toUpperCase());

/** The colour that an element such as <color> or <fgColor> names; undefined: the program's own choice. `palette`: of the workbook's own. */
export function colorOf(
  { rgb, theme, tint, indexed: place, auto }: Attributes,
  themeColors: readonly (string | undefined)[],
  palette: readonly string[] = [],
): string | undefined {
  if (rgb !== undefined) return rgb.value.slice(-6).toUpperCase();
  if (auto !== undefined) return undefined;
  if (theme !== undefined)
    return tinted(themeColors[Number(theme.value)], Number(tint?.value ?? 0));
  if (place === undefined) return undefined;
  const at = Number(place.value);
  if (palette[at] !== undefined) return palette[at];
  return at < 8 ? indexed[at] : indexed[at - 8];
}

/** Lighter where `tint` is positive, darker where it is negative. */
function tinted(color: string | undefined, tint: number): string | undefined {
  if (color === undefined || !Number.isFinite(tint) || tint === 0) return color;
  const share = Math.min(1, Math.abs(tint));
  const toward = tint > 0 ? 255 : 0;
  return [0, 2, 4]
    .map((at) => Number.parseInt(color.slice(at, at + 2), 16))
    .map((part) => Math.round(part + (toward - part) * share))
    .map((part) => part.toString(16).padStart(2, "0").toUpperCase())
    .join("");
}
