import { positionOf } from "../../engine/workbook/read/address.js";
import type { WorkbookContent } from "../../engine/workbook/read/content.js";
import type { CellLook } from "../../engine/workbook/read/look/content.js";

// Web Content Accessibility Guidelines 2.1, W3C, success criterion 1.4.3: contrast ratio at least 4.5, of large text
// (from 18 points on) at least 3 (from memory).
const least = 4.5;
const leastOfLarge = 3;
const large = 18;

/** Relative luminance of a color `RRGGBB`, as the same guidelines define it. */
function luminance(color: string): number {
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) => {
    const part = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio of two colors, 1 to 21. */
export function contrast(one: string, other: string): number {
  const [a, b] = [luminance(one), luminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** Shows nothing, so its color says nothing. */
const showsNothing = ";;;";

type Colors = Partial<Pick<CellLook, "ink" | "fill" | "size" | "format">>;

function fault({ ink = "000000", fill = "FFFFFF", size = 10, format }: Colors, where: string) {
  const ratio = contrast(ink, fill);
  const enough = size >= large ? leastOfLarge : least;
  if (format === showsNothing || ratio >= enough) return [];
  return [`${where}: ${ink} on ${fill} at ${size} points, ratio ${ratio.toFixed(2)}`];
}

/** How many colors of a text on its ground stand on the sheets, and which of them are too pale to be read. */
export function readable(content: WorkbookContent): { pairs: number; faults: string[] } {
  const { styles } = content.look ?? {};
  if (styles === undefined) throw new Error("The workbook was read without its look.");
  const pairs = new Map<string, string[]>();
  const look = (colors: Colors, where: string) => {
    const { ink, fill, size, format } = colors;
    const key = [ink, fill, (size ?? 10) >= large, format === showsNothing].join(" ");
    if (!pairs.has(key)) pairs.set(key, fault(colors, where));
  };
  for (const { name, cells, look: sheet } of content.sheets) {
    for (const [address, { style = 0, value }] of cells) {
      const own = styles.cells[style] ?? {};
      if (value === null || value === "") continue;
      look(own, `${name}!${address}`);
    }
    // each rule on each style that a cell of its areas has, filled or not: it may be filled when the rule holds
    for (const { areas, look: rule } of sheet?.rules ?? []) {
      const changed = rule === undefined ? undefined : styles.rules[rule];
      if (changed === undefined) continue;
      const within = areas.split(" ").map(areaOf);
      for (const [address, { style = 0 }] of cells) {
        const at = placeOf(address);
        if (!within.some((area) => lies(at, area))) continue;
        look({ ...styles.cells[style], ...changed }, `${name}!${address} by a rule`);
      }
    }
  }
  return { pairs: pairs.size, faults: [...pairs.values()].flat() };
}

interface Place {
  readonly row: number;
  readonly column: number;
}

/** Where a cell lies; of each address once, since each rule asks for all. */
function placeOf(address: string): Place {
  const known = places.get(address) ?? positionOf(address);
  if (known === undefined) throw new Error(`${address} is no cell.`);
  places.set(address, known);
  return known;
}
const places = new Map<string, Place>();

function areaOf(area: string): readonly [from: Place, to: Place] {
  const [from = "", to = from] = area.split(":");
  return [placeOf(from), placeOf(to)];
}

const lies = ({ row, column }: Place, [from, to]: readonly [from: Place, to: Place]): boolean =>
  row >= from.row && row <= to.row && column >= from.column && column <= to.column;
