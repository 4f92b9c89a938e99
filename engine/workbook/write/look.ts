import type { Alignment, Borders, ConditionalFormattingRule, Fill, Font, Style } from "exceljs";

/**
 * The look of a workbook: calm, and legible when printed in grey. Kinds of cells
 * differ by box and type, not by colour alone: an input stands in a full box on a
 * tint, an office-book figure in a dotted box, a published figure is set in italics.
 */
/** Every office has it, or one of the same widths. */
export const typeface = "Arial";

/** Points of the row in which the title of a sheet stands. */
export const titleHeight = 24;

export const ink = "FF1F2A2E";
export const quiet = "FF5B6B70";
export const accent = "FF2F5D62";
export const sand = "FFF6F0E2";
export const mist = "FFE6EEEE";
export const alarm = "FF9C2F1F";
export const alarmTint = "FFF9E4DF";

const rule = { style: "thin", color: { argb: "FFB9C4C6" } } as const;
const box = { style: "thin", color: { argb: "FF7A8A8E" } } as const;
const dots = { style: "dotted", color: { argb: "FF7A8A8E" } } as const;

/** The type of the workbook, with what is told of it. */
export const font = (more: Partial<Font> = {}): Partial<Font> => ({
  name: typeface,
  size: 10,
  color: { argb: ink },
  ...more,
});

const fill = (argb: string): Fill => ({ type: "pattern", pattern: "solid", fgColor: { argb } });

const around = (line: Borders["top"] | typeof box): Partial<Borders> => ({
  top: line as Borders["top"],
  left: line as Borders["left"],
  bottom: line as Borders["bottom"],
  right: line as Borders["right"],
});

const top: Partial<Alignment> = { vertical: "top" };
const wrapped: Partial<Alignment> = { vertical: "top", wrapText: true };

export const styles = {
  plain: { font: font(), alignment: top },
  title: { font: font({ size: 16, bold: true, color: { argb: accent } }), alignment: wrapped },
  // it goes on over the columns beside it, however narrow its own is
  sheetTitle: { font: font({ size: 16, bold: true, color: { argb: accent } }), alignment: top },
  purpose: { font: font({ italic: true, color: { argb: quiet } }) },
  heading: {
    font: font({ size: 12, bold: true, color: { argb: accent } }),
    border: { bottom: { style: "medium", color: { argb: accent } } },
  },
  sheetStatus: { font: font({ size: 9, bold: true, color: { argb: alarm } }) },
  label: { font: font(), alignment: wrapped },
  strongLabel: { font: font({ bold: true }), alignment: wrapped },
  unit: { font: font({ color: { argb: quiet } }), alignment: { vertical: "top", indent: 1 } },
  link: { font: font({ size: 9, underline: true, color: { argb: accent } }) },
  openItem: {
    font: font({ size: 9, underline: true, color: { argb: accent } }),
    alignment: wrapped,
  },
  note: { font: font({ size: 9, color: { argb: quiet } }), alignment: wrapped },
  verdict: { font: font({ size: 12, bold: true }), alignment: wrapped },
  message: { font: font({ size: 9 }), alignment: wrapped },
  header: {
    font: font({ bold: true, size: 9 }),
    fill: fill(mist),
    alignment: { vertical: "bottom", wrapText: true, horizontal: "center" },
    border: { top: rule },
  },
  unitHeader: {
    font: font({ size: 8, color: { argb: quiet } }),
    fill: fill(mist),
    alignment: { horizontal: "center" },
    border: { bottom: box },
  },
  input: { font: font(), fill: fill(sand), border: around(box), alignment: top },
  book: { font: font(), border: around(dots), alignment: top },
  published: { font: font({ italic: true }), border: { bottom: rule }, alignment: top },
  figure: { font: font(), border: { bottom: rule }, alignment: top },
  strong: { font: font({ bold: true }), border: { bottom: rule }, alignment: top },
  total: {
    font: font({ bold: true }),
    border: { top: box, bottom: { style: "double", color: { argb: ink } } },
    alignment: top,
  },
  check: { font: font({ bold: true }), border: { bottom: rule }, alignment: top },
  prose: { font: font({ size: 11 }), alignment: wrapped },
  caution: {
    font: font({ size: 10 }),
    // clear of the bar at its left
    alignment: { ...wrapped, horizontal: "left", indent: 1 },
    border: { left: { style: "thick", color: { argb: alarm } } },
  },
} as const satisfies Record<string, Partial<Style>>;

/** For cells whose value calls for attention while `test` is true. */
export function attention(test: string): ConditionalFormattingRule {
  return {
    type: "expression",
    formulae: [test],
    priority: 1,
    style: {
      font: { bold: true, color: { argb: alarm } },
      fill: { type: "pattern", pattern: "solid", bgColor: { argb: alarmTint } },
    },
  };
}

const none = { style: "none" } as unknown as Borders["top"];
const noBorder = { top: none, left: none, bottom: none, right: none };

/** For the rows of a table that a job does not use: they show nothing. */
export function hidden(test: string): ConditionalFormattingRule {
  return {
    type: "expression",
    formulae: [test],
    priority: 2,
    style: { numFmt: ";;;", font: { color: { argb: "FFFFFFFF" } }, border: noBorder },
  };
}

/** For a count among measures: without decimals. */
export function wholeNumber(test: string): ConditionalFormattingRule {
  return { type: "expression", formulae: [test], priority: 5, style: { numFmt: "#,##0" } };
}

/** For lines of text that are headings. */
export function headingLine(test: string): ConditionalFormattingRule {
  return {
    type: "expression",
    formulae: [test],
    priority: 3,
    style: {
      font: { bold: true, color: { argb: accent } },
      border: { bottom: { style: "thin", color: { argb: accent } } },
    },
  };
}
