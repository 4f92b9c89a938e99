import type { LineLook } from "../../../template/declare.js";
import { typeface } from "../look.js";

/** The stroke of a line: points, a preset dash of DrawingML, an RGB color. */
export interface Stroke {
  readonly weight: number;
  readonly dash: "solid" | "dash" | "sysDash" | "sysDot" | "lgDash";
  readonly color: string;
}

/**
 * Lines differ by weight and dash, so that they are told apart in gray print too. Each color has
 * a contrast of 3 to 1 or more against white (WCAG 2.1, criterion 1.4.11).
 */
export const strokes: Readonly<Record<LineLook, Stroke>> = {
  heavy: { weight: 2.5, dash: "solid", color: "1F2A2E" },
  broad: { weight: 3, dash: "solid", color: "2A7F9E" },
  plain: { weight: 1.5, dash: "solid", color: "2F5D62" },
  "long dashes": { weight: 1.75, dash: "lgDash", color: "8A4B14" },
  dashed: { weight: 1.25, dash: "sysDash", color: "4A5A5F" },
  dotted: { weight: 1.5, dash: "sysDot", color: "1F2A2E" },
  fine: { weight: 0.75, dash: "solid", color: "5B6B70" },
};

/** Looks of the series of a chart for which none is told, by their place. */
export const usualLooks: readonly LineLook[] = [
  "plain",
  "long dashes",
  "dotted",
  "heavy",
  "dashed",
];

export const markers = ["circle", "diamond", "square", "triangle"] as const;

/** Fills of bars, by their place: steps of lightness, each in an outline, and what is read on them. */
export const fills: readonly { readonly color: string; readonly text: string }[] = [
  { color: "2F5D62", text: "FFFFFF" },
  { color: "A9C4C8", text: "1F2A2E" },
  { color: "54787F", text: "FFFFFF" },
  { color: "DCE7E9", text: "1F2A2E" },
  { color: "8DA9AE", text: "1F2A2E" },
  { color: "1F2A2E", text: "FFFFFF" },
  { color: "FFFFFF", text: "1F2A2E" },
];

export const ink = "1F2A2E";
export const gridline = "D5DCDD";

export const solid = (color: string): string =>
  `<a:solidFill><a:srgbClr val="${color}"/></a:solidFill>`;

/** A line's properties; DrawingML counts in EMU, 12,700 a point. */
export const stroked = ({ weight, dash, color }: Stroke): string =>
  `<a:ln w="${Math.round(weight * 12700)}" cap="flat">${solid(color)}<a:prstDash val="${dash}"/><a:round/></a:ln>`;

export const unstroked = `<a:ln w="12700"><a:noFill/></a:ln>`;

/** The typeface of the sheets. */
export const face = `<a:latin typeface="${typeface}"/>`;

/** Properties of text: its size in points. */
export function textProperties(size: number, { color = ink, wrapped = true } = {}): string {
  const run = `<a:defRPr sz="${size * 100}" b="0">${solid(color)}${face}</a:defRPr>`;
  return `<c:txPr><a:bodyPr${wrapped ? "" : ` wrap="none"`}/><a:lstStyle/><a:p><a:pPr>${run}</a:pPr><a:endParaRPr lang="en-US"/></a:p></c:txPr>`;
}
