import type { Alignment, Borders, Style } from "exceljs";
import type { PaperLook } from "../../template/paper.js";
import { accent, alarm, font, ink, mist, quiet } from "./look.js";

/** How places on paper look: told apart by size, weight and box, so that they read in gray too. */
type Side = Borders["top"];
const side = (style: Side["style"], argb: string): Side => ({ style, color: { argb } }) as Side;
const around = (line: Side): Partial<Borders> => ({
  top: line,
  left: line,
  bottom: line,
  right: line,
});
const thin = side("thin", "FF7A8A8E");
const left: Partial<Alignment> = { vertical: "top", wrapText: true };
const center: Partial<Alignment> = { vertical: "middle", horizontal: "center", wrapText: true };
const tint = (argb: string): Style["fill"] => ({
  type: "pattern",
  pattern: "solid",
  fgColor: { argb },
});

export const paperLooks: Readonly<Record<PaperLook, Partial<Style>>> = {
  name: {
    font: font({ size: 18, bold: true, color: { argb: accent } }),
    alignment: { vertical: "middle", wrapText: true },
  },
  title: {
    font: font({ size: 14, bold: true }),
    alignment: { vertical: "middle", wrapText: true },
  },
  heading: {
    font: font({ size: 11, bold: true, color: { argb: accent } }),
    border: { bottom: side("medium", accent) },
    alignment: { vertical: "bottom" },
  },
  text: { font: font(), alignment: left },
  strong: { font: font({ bold: true }), alignment: left },
  // what a box at its right holds
  beside: { font: font({ bold: true }), alignment: { vertical: "middle", wrapText: true } },
  small: { font: font({ size: 9, color: { argb: quiet } }), alignment: left },
  right: { font: font(), alignment: { vertical: "top", horizontal: "right", wrapText: true } },
  figure: {
    font: font({ size: 15, bold: true, color: { argb: accent } }),
    alignment: center,
    border: { top: side("medium", accent) },
  },
  caption: {
    font: font({ size: 9, color: { argb: quiet } }),
    alignment: { ...center, vertical: "top" },
  },
  price: {
    font: font({ size: 18, bold: true }),
    alignment: center,
    border: around(side("medium", ink)),
    fill: tint(mist),
  },
  label: { font: font({ size: 9, color: { argb: quiet } }), alignment: left },
  // to be written on by hand
  field: { font: font(), alignment: { vertical: "bottom" }, border: { bottom: thin } },
  blank: { font: font(), border: around(thin), alignment: left },
  slot: {
    font: font({ size: 8, color: { argb: quiet } }),
    alignment: center,
    border: around(side("dotted", "FFB9C4C6")),
  },
  // a picture, or nothing: what may lie there is told by a note, which does not print
  photo: { font: font({ size: 8, color: { argb: quiet } }), alignment: center },
  // the office's own, or nothing: paper has no box to be filled in by its reader
  logo: { font: font({ size: 8, color: { argb: quiet } }), alignment: center },
  alarm: {
    font: font({ bold: true, color: { argb: alarm } }),
    alignment: left,
  },
};
