import { expect, test } from "vitest";
import { fills, strokes } from "../../../../../engine/workbook/write/charts/looks.js";

/** Relative luminance of an RGB color (WCAG 2.1), which is what gray print keeps of it. */
function luminance(color: string): number {
  const [r, g, b] = [0, 2, 4].map((at) => {
    const share = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

const contrast = (one: string, other: string): number => {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return ((light as number) + 0.05) / ((dark as number) + 0.05);
};

test.each(Object.entries(strokes))("the %s line stands out from white paper", (_, { color }) => {
  expect(contrast(color, "FFFFFF")).toBeGreaterThanOrEqual(3);
});

test.each(fills)("a figure can be read on $color", ({ color, text }) => {
  expect(contrast(color, text)).toBeGreaterThanOrEqual(4.5);
});

test("bars that stand side by side differ in gray", () => {
  const next = fills.slice(1).map(({ color }, i) => contrast(color, fills[i]?.color as string));
  expect(Math.min(...next)).toBeGreaterThanOrEqual(1.5);
});
