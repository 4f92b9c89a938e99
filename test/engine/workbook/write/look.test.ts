import type { Fill, Style } from "exceljs";
import { expect, test } from "vitest";
import { alarm, alarmTint, styles } from "../../../../engine/workbook/write/look.js";

/** Relative luminance and contrast of WCAG 2.1. */
const luminance = (argb: string): number => {
  const [red = 0, green = 0, blue = 0] = [2, 4, 6].map((at) => {
    const part = Number.parseInt(argb.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
};
const contrast = (one: string, other: string): number => {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [
    number,
    number,
  ];
  return (light + 0.05) / (dark + 0.05);
};

const groundOf = (fill: Fill | undefined): string =>
  fill?.type === "pattern" ? (fill.fgColor?.argb ?? "FFFFFFFF") : "FFFFFFFF";

test.each(Object.entries(styles))("%s is read on its ground", (_, style: Partial<Style>) => {
  const { font, fill } = style;
  const color = font?.color?.argb ?? "FF000000";
  expect(contrast(color, groundOf(fill))).toBeGreaterThanOrEqual(4.5);
});

test("what calls for attention is read on its tint", () => {
  expect(contrast(alarm, alarmTint)).toBeGreaterThanOrEqual(4.5);
});
