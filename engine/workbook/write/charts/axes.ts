import { escaped } from "../package.js";
import { face, gridline, ink, solid, textProperties } from "./looks.js";

export const axisIds = { across: 1001, up: 1002 } as const;

/** The ids by which a plot names its axes. */
export const axesNamed = `<c:axId val="${axisIds.across}"/><c:axId val="${axisIds.up}"/>`;

export interface Axis {
  readonly id: number;
  readonly crossing: number;
  readonly side: "b" | "l";
  readonly title: string;
  readonly format: string;
  /** Neither line nor figures nor title. */
  readonly hidden: boolean;
  /** Where it stands on the other axis: at its least figure, which names laid from the top down have at the top. */
  readonly stands: "min" | "max";
  /** Points stand on its figures; bars between them. */
  readonly between: "midCat" | "between";
}

/** A text of a chart in one paragraph: its title, or that of an axis. */
export function titled(text: string, size: number, bold: boolean): string {
  const looks = `sz="${size * 100}" b="${bold ? 1 : 0}"`;
  const run = `<a:r><a:rPr lang="en-US" ${looks}>${solid(ink)}${face}</a:rPr><a:t>${escaped(text)}</a:t></a:r>`;
  return `<c:title><c:tx><c:rich><a:bodyPr/><a:lstStyle/><a:p><a:pPr><a:defRPr ${looks}/></a:pPr>${run}</a:p></c:rich></c:tx><c:overlay val="0"/></c:title>`;
}

/**
 * The step of an axis that is not shown, so that it ends where the drawing does: left alone, programs round
 * its end up by a step of their own.
 */
const fineStep = 0.5;

/** An axis of figures (ISO/IEC 29500-1 §21.2.2.226). */
export function valueAxis({
  id,
  crossing,
  side,
  title,
  format,
  hidden,
  stands,
  between,
}: Axis): string {
  const thin = (color: string) => `<c:spPr><a:ln w="6350">${solid(color)}</a:ln></c:spPr>`;
  return (
    `<c:valAx><c:axId val="${id}"/><c:scaling><c:orientation val="minMax"/></c:scaling><c:delete val="${hidden ? 1 : 0}"/><c:axPos val="${side}"/>` +
    (hidden ? "" : `<c:majorGridlines>${thin(gridline)}</c:majorGridlines>`) +
    (hidden || title === "" ? "" : titled(title, 9, false)) +
    `<c:numFmt formatCode="${escaped(format)}" sourceLinked="0"/><c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos val="${between === "between" ? "nextTo" : "low"}"/>` +
    `${thin("5B6B70")}${textProperties(9)}<c:crossAx val="${crossing}"/><c:crosses val="${stands}"/><c:crossBetween val="${between}"/>${hidden ? `<c:majorUnit val="${fineStep}"/>` : ""}</c:valAx>`
  );
}

/** The axis of bars' names: the first bar stands on top, as the rows do. */
export function nameAxis(): string {
  return (
    `<c:catAx><c:axId val="${axisIds.across}"/><c:scaling><c:orientation val="maxMin"/></c:scaling><c:delete val="0"/><c:axPos val="l"/><c:numFmt formatCode="General" sourceLinked="0"/>` +
    `<c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/><c:spPr><a:ln w="6350">${solid("5B6B70")}</a:ln></c:spPr>${textProperties(9)}` +
    `<c:crossAx val="${axisIds.up}"/><c:crosses val="autoZero"/></c:catAx>`
  );
}
