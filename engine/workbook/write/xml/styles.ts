import type { Alignment, Borders, Color, Fill, Font, Style } from "exceljs";
import type { Look } from "../book/sheet.js";
import { typeface } from "../look.js";
import { attribute, head } from "./text.js";

/** A list of XML elements, each kept once. */
class Elements {
  readonly #places = new Map<string, number>();

  constructor(first: readonly string[]) {
    for (const one of first) this.placeOf(one);
  }

  placeOf(xml: string): number {
    const known = this.#places.get(xml);
    if (known !== undefined) return known;
    this.#places.set(xml, this.#places.size);
    return this.#places.size - 1;
  }

  list(tag: string, more = ""): string {
    return `<${tag} count="${this.#places.size}"${more}>${[...this.#places.keys()].join("")}</${tag}>`;
  }
}

/** The formats that have numbers of their own (ISO/IEC 29500-1, 18.8.30), of those that are used here. */
const builtIn: Readonly<Record<string, number>> = {
  General: 0,
  "0": 1,
  "0.00": 2,
  "#,##0": 3,
  "#,##0.00": 4,
  "0%": 9,
  "0.00%": 10,
  "@": 49,
};
/** The first number that is free for others. */
const firstOwn = 164;

/**
 * The styles of a book (ISO/IEC 29500-1, 18.8): each look of a cell once, with its font, fill, border and format.
 * Column widths are counted in digits of the first font.
 */
export class Styles {
  readonly #fonts = new Elements([
    `<font><sz val="10"/><name val="${typeface}"/><family val="2"/></font>`,
  ]);
  readonly #fills = new Elements([
    `<fill><patternFill patternType="none"/></fill>`,
    `<fill><patternFill patternType="gray125"/></fill>`,
  ]);
  readonly #borders = new Elements([borderXml({})]);
  readonly #looks = new Elements([cellXml(0, 0, 0, 0, {})]);
  readonly #formats = new Map<string, number>();
  readonly #differences: string[] = [];
  readonly #known = new Map<Look, number>();

  /** The place of a cell's look. */
  placeOf(look: Look): number {
    const known = this.#known.get(look);
    if (known !== undefined) return known;
    const { numFmt, font, fill, border } = look;
    const format = numFmt === undefined ? 0 : this.#formatOf(numFmt);
    const place = this.#looks.placeOf(
      cellXml(
        format,
        font === undefined ? 0 : this.#fonts.placeOf(fontXml(font)),
        fill === undefined ? 0 : this.#fills.placeOf(fillXml(fill)),
        border === undefined ? 0 : this.#borders.placeOf(borderXml(border)),
        look,
      ),
    );
    this.#known.set(look, place);
    return place;
  }

  /** The place of what a rule changes of a cell's look. */
  differenceOf({ font, numFmt, fill, border }: Partial<Style>): number {
    const format =
      numFmt === undefined
        ? ""
        : `<numFmt numFmtId="${this.#formatOf(numFmt)}" formatCode="${attribute(numFmt)}"/>`;
    const parts = [
      font === undefined ? "" : fontXml(font),
      format,
      fill === undefined ? "" : fillXml(fill),
      border === undefined ? "" : borderXml(border),
    ];
    return this.#differences.push(`<dxf>${parts.join("")}</dxf>`) - 1;
  }

  #formatOf(code: string): number {
    const known = builtIn[code] ?? this.#formats.get(code);
    if (known !== undefined) return known;
    const number = firstOwn + this.#formats.size;
    this.#formats.set(code, number);
    return number;
  }

  xml(): string {
    const formats = [...this.#formats].map(
      ([code, number]) => `<numFmt numFmtId="${number}" formatCode="${attribute(code)}"/>`,
    );
    const count = this.#differences.length;
    return (
      `${head}<styleSheet ${spaces}>` +
      (formats.length === 0
        ? ""
        : `<numFmts count="${formats.length}">${formats.join("")}</numFmts>`) +
      this.#fonts.list("fonts", ' x14ac:knownFonts="1"') +
      this.#fills.list("fills") +
      this.#borders.list("borders") +
      `<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>` +
      this.#looks.list("cellXfs") +
      `<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>` +
      (count === 0
        ? `<dxfs count="0"/>`
        : `<dxfs count="${count}">${this.#differences.join("")}</dxfs>`) +
      `${tableStyles}</styleSheet>`
    );
  }
}

const spaces =
  'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" ' +
  'mc:Ignorable="x14ac x16r2" xmlns:x14ac="http://schemas.microsoft.com/office/spreadsheetml/2009/9/ac" ' +
  'xmlns:x16r2="http://schemas.microsoft.com/office/spreadsheetml/2015/02/main"';

const tableStyles = `<tableStyles count="0" defaultTableStyle="TableStyleMedium2" defaultPivotStyle="PivotStyleLight16"/>`;

function cellXml(
  format: number,
  font: number,
  fill: number,
  border: number,
  { alignment, protection }: Look,
): string {
  const apply = (name: string, is: unknown) => (is ? ` apply${name}="1"` : "");
  const locked = protection?.locked === false ? `<protection locked="0"/>` : "";
  const inner = (alignment === undefined ? "" : alignmentXml(alignment)) + locked;
  const open =
    `<xf numFmtId="${format}" fontId="${font}" fillId="${fill}" borderId="${border}" xfId="0"` +
    apply("NumberFormat", format) +
    apply("Font", font) +
    apply("Fill", fill) +
    apply("Border", border) +
    apply("Alignment", alignment) +
    apply("Protection", protection);
  return inner === "" ? `${open}/>` : `${open}>${inner}</xf>`;
}

function alignmentXml({ horizontal, vertical, wrapText, indent }: Partial<Alignment>): string {
  const said = [
    horizontal === undefined ? "" : ` horizontal="${horizontal}"`,
    vertical === undefined ? "" : ` vertical="${vertical === "middle" ? "center" : vertical}"`,
    wrapText ? ' wrapText="1"' : "",
    indent ? ` indent="${indent}"` : "",
  ].join("");
  return said === "" ? "" : `<alignment${said}/>`;
}

function fontXml({ bold, italic, underline, color, size, name }: Partial<Font>): string {
  return (
    `<font>${bold ? "<b/>" : ""}${italic ? "<i/>" : ""}${underline ? "<u/>" : ""}` +
    (color === undefined ? "" : colorXml("color", color)) +
    (size === undefined ? "" : `<sz val="${size}"/>`) +
    `${name === undefined ? "" : `<name val="${attribute(name)}"/>`}</font>`
  );
}

const colorXml = (tag: string, { argb }: Partial<Color>): string => `<${tag} rgb="${argb}"/>`;

function fillXml(fill: Fill): string {
  if (fill.type !== "pattern") throw new Error("A fill is one color.");
  const { pattern, fgColor, bgColor } = fill;
  const colors =
    (fgColor === undefined ? "" : colorXml("fgColor", fgColor)) +
    (bgColor === undefined ? "" : colorXml("bgColor", bgColor));
  return `<fill><patternFill patternType="${pattern}">${colors}</patternFill></fill>`;
}

function borderXml(border: Partial<Borders>): string {
  const edge = (side: "left" | "right" | "top" | "bottom") => {
    const { style, color } = border[side] ?? {};
    if (style === undefined) return `<${side}/>`;
    return color === undefined
      ? `<${side} style="${style}"/>`
      : `<${side} style="${style}">${colorXml("color", color)}</${side}>`;
  };
  return `<border>${edge("left")}${edge("right")}${edge("top")}${edge("bottom")}<diagonal/></border>`;
}
