import { spreadsheet } from "../namespaces.js";
import type { Package } from "../package.js";
import { booleanOf } from "../text.js";
import type { Attributes } from "../xml.js";
import { colorOf, readPalette } from "./colors.js";
import type { CellLook, RuleLook, Styles } from "./content.js";

/** Codes that a file may name by number alone (ISO/IEC 29500-1 §18.8.30); dates as in US programs. */
const builtIn: Readonly<Record<number, string>> = {
  1: "0",
  2: "0.00",
  3: "#,##0",
  4: "#,##0.00",
  5: '"$"#,##0_);("$"#,##0)',
  6: '"$"#,##0_);[Red]("$"#,##0)',
  7: '"$"#,##0.00_);("$"#,##0.00)',
  8: '"$"#,##0.00_);[Red]("$"#,##0.00)',
  9: "0%",
  10: "0.00%",
  11: "0.00E+00",
  12: "# ?/?",
  13: "# ??/??",
  14: "m/d/yyyy",
  15: "d-mmm-yy",
  16: "d-mmm",
  17: "mmm-yy",
  18: "h:mm AM/PM",
  19: "h:mm:ss AM/PM",
  20: "h:mm",
  21: "h:mm:ss",
  22: "m/d/yyyy h:mm",
  37: "#,##0_);(#,##0)",
  38: "#,##0_);[Red](#,##0)",
  39: "#,##0.00_);(#,##0.00)",
  40: "#,##0.00_);[Red](#,##0.00)",
  45: "mm:ss",
  46: "[h]:mm:ss",
  47: "mm:ss.0",
  48: "##0.0E+0",
  49: "@",
};

type Draft<T> = { -readonly [key in keyof T]: T[key] };
type Font = Draft<Pick<CellLook, "ink" | "size" | "typeface" | "struck">>;

/** Reads what of the styles part decides how text appears (ISO/IEC 29500-1 §18.8). */
export function readStyles(
  from: Package,
  part: string,
  theme: readonly (string | undefined)[],
): Styles {
  const reader = new StylesReader(theme, readPalette(from.text(part)));
  from.walk(part, {
    namespaces: spreadsheet,
    root: "styleSheet",
    open(path, attributes) {
      reader.open(path, attributes);
      from.budget.check("styles", reader.cells.length, "The workbook");
      from.budget.check("styles", reader.rules.length, "The workbook");
    },
  });
  return { cells: reader.cells, rules: reader.rules };
}

/** Hears the elements of the part in their order. */
class StylesReader {
  readonly cells: Draft<CellLook>[] = [];
  readonly rules: Draft<RuleLook>[] = [];
  private readonly formats = new Map<number, string>();
  private readonly fonts: Font[] = [];
  private readonly fills: (string | undefined)[] = [];
  private pattern = "none";
  private ground: string | undefined;
  /** Of each border, whether it has a line from corner to corner. */
  private readonly crossed: boolean[] = [];
  private slanted = false;

  constructor(
    private readonly theme: readonly (string | undefined)[],
    private readonly palette: readonly string[],
  ) {}

  private color(attributes: Attributes): string | undefined {
    return colorOf(attributes, this.theme, this.palette);
  }

  open(path: string, attributes: Attributes): void {
    if (path.startsWith("styleSheet/dxfs/")) this.openRule(path, attributes);
    else if (path === "styleSheet/numFmts/numFmt") {
      this.formats.set(
        Number(attributes.numFmtId?.value),
        attributes.formatCode?.value ?? "General",
      );
    } else if (path === "styleSheet/fonts/font") this.fonts.push({});
    else if (path.startsWith("styleSheet/fonts/font/")) {
      this.openFont(path.slice(22), attributes, this.fonts.at(-1) ?? {});
    } else if (path.startsWith("styleSheet/fills/")) this.openFill(path, attributes);
    else if (path.startsWith("styleSheet/borders/")) this.openBorder(path, attributes);
    else if (path === "styleSheet/cellXfs/xf") this.openCell(attributes);
    else if (path === "styleSheet/cellXfs/xf/alignment") {
      const cell = this.cells.at(-1);
      if (cell !== undefined) align(cell, attributes);
    }
  }

  private openFont(name: string, attributes: Attributes, font: Font): void {
    if (name === "color") font.ink = this.color(attributes) as string;
    else if (name === "sz") font.size = Number(attributes.val?.value);
    else if (name === "name") font.typeface = attributes.val?.value ?? "";
    else if (name === "strike" && on(attributes)) font.struck = true;
    if (font.ink === undefined) delete font.ink;
  }

  private openFill(path: string, attributes: Attributes): void {
    const set = (color: string | undefined) => {
      this.fills[this.fills.length - 1] = color;
    };
    if (path === "styleSheet/fills/fill") this.fills.push(undefined);
    else if (path === "styleSheet/fills/fill/patternFill") {
      this.pattern = attributes.patternType?.value ?? "none";
      this.ground = undefined;
    } else if (path === "styleSheet/fills/fill/patternFill/fgColor") {
      const share = shareOf(this.pattern);
      this.ground = this.color(attributes);
      if (share > 0) set(mixed(this.ground ?? "000000", "FFFFFF", share));
    } else if (path === "styleSheet/fills/fill/patternFill/bgColor") {
      const share = shareOf(this.pattern);
      const under = this.color(attributes) ?? "FFFFFF";
      if (share > 0 && share < 1) set(mixed(this.ground ?? "000000", under, share));
    } else if (path === "styleSheet/fills/fill/gradientFill/stop/color") {
      const [before, here] = [this.fills.at(-1), this.color(attributes)];
      set(before === undefined || here === undefined ? here : mixed(before, here, 0.5));
    }
  }

  private openBorder(path: string, attributes: Attributes): void {
    if (path === "styleSheet/borders/border") {
      const { diagonalUp, diagonalDown } = attributes;
      this.slanted =
        booleanOf(diagonalUp?.value) === true || booleanOf(diagonalDown?.value) === true;
      this.crossed.push(false);
    } else if (path === "styleSheet/borders/border/diagonal" && this.slanted) {
      this.crossed[this.crossed.length - 1] = (attributes.style?.value ?? "none") !== "none";
    }
  }

  private openCell(attributes: Attributes): void {
    const id = Number(attributes.numFmtId?.value ?? 0);
    const font = this.fonts[Number(attributes.fontId?.value ?? 0)] ?? {};
    const fill = this.fills[Number(attributes.fillId?.value ?? 0)];
    const format = this.formats.get(id) ?? builtIn[id] ?? "General";
    const crossed = this.crossed[Number(attributes.borderId?.value ?? 0)] === true;
    this.cells.push({
      ...font,
      format,
      indent: 0,
      ...(fill === undefined ? {} : { fill }),
      ...(crossed ? { crossed } : {}),
    });
  }

  private openRule(path: string, attributes: Attributes): void {
    const rule = this.rules.at(-1);
    if (path === "styleSheet/dxfs/dxf") this.rules.push({});
    else if (rule === undefined) return;
    else if (path.endsWith("/numFmt")) rule.format = attributes.formatCode?.value ?? "General";
    else if (path.endsWith("/font/color")) set(rule, "ink", this.color(attributes));
    else if (path.endsWith("/font/strike") && on(attributes)) rule.struck = true;
    // the color of a rule's plain fill stands where that of a pattern's ground does
    else if (path.endsWith("/patternFill/bgColor")) set(rule, "fill", this.color(attributes));
  }
}

/** How much of a cell the dots or lines of a pattern cover (ISO/IEC 29500-1 §18.18.55), about. */
function shareOf(pattern: string): number {
  if (pattern === "solid") return 1;
  if (pattern === "gray125" || pattern === "gray0625") return 0.1;
  if (pattern.startsWith("light")) return 0.25;
  return pattern.startsWith("dark") ? 0.7 : pattern === "mediumGray" ? 0.5 : 0;
}

/** A colour of which so much is one and the rest the other. */
function mixed(one: string, other: string, share: number): string {
  return [0, 2, 4]
    .map((at) => {
      const [a, b] = [one, other].map((color) => Number.parseInt(color.slice(at, at + 2), 16));
      const part = Math.round((a as number) * share + (b as number) * (1 - share));
      return part.toString(16).padStart(2, "0").toUpperCase();
    })
    .join("");
}

function align(cell: Draft<CellLook>, given: Attributes): void {
  cell.indent = Number(given.indent?.value ?? 0);
  const turned = Number(given.textRotation?.value ?? 0);
  if (turned !== 0) cell.turned = turned;
  if (given.horizontal?.value === "fill") cell.repeated = true;
  if (given.readingOrder?.value === "2") cell.rightToLeft = true;
  if (booleanOf(given.wrapText?.value) === true) cell.wraps = true;
}

function set(rule: Draft<RuleLook>, key: "ink" | "fill", color: string | undefined): void {
  if (color !== undefined) rule[key] = color;
}

/** An element such as <strike/> is on unless it says that it is not. */
const on = ({ val }: Attributes): boolean => val === undefined || booleanOf(val.value) === true;
