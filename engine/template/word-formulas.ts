import { formula, type NamedFormula } from "../formula/named-formula.js";
import { number, text } from "../units/quantity.js";
import type { SheetDeclaration } from "./declare.js";

const eighths = ["1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];
const words = eighths.map((one) => `"${one}"`).join(",");

/** Lengths as a tape is read. */
const formulas: readonly NamedFormula[] = [
  formula(
    "FEET_AND_INCHES",
    "A length in words: 2 ft 6 in",
    { inches: number },
    text,
    'IF(inches<12,FIXED(inches,0)&" in",FIXED(INT(inches/12),0)&" ft"&IF(MOD(inches,12)=0,""," "&FIXED(MOD(inches,12),0)&" in"))',
    "12 inches a foot",
  ),
  formula(
    "INCHES_IN_EIGHTHS",
    "A small length in words: 2-3/8 in",
    { eighths: number },
    text,
    `IF(eighths<0,"-","")&IF(MOD(ABS(eighths),8)=0,FIXED(ABS(eighths)/8,0),IF(ABS(eighths)>8,FIXED(INT(ABS(eighths)/8),0)&"-","")&CHOOSE(MAX(1,MOD(ABS(eighths),8)),${words}))&" in"`,
    "eighths of an inch, as tapes are marked",
  ),
  formula(
    "MILLIMETERS",
    "A small length in words, by fives from 50 mm on: 100 mm",
    { fine: number, fives: number },
    text,
    'FIXED(IF(ABS(fine)<50,fine,5*fives),0)&" mm"',
    "millimeters, as a tape is read",
  ),
  formula(
    "FEET_AND_EIGHTHS",
    "A length to an eighth of an inch in words: 4 ft 2-3/8 in",
    { eighths: number },
    text,
    'IF(eighths<0,"-","")&IF(ABS(eighths)<96,"",FIXED(INT(ABS(eighths)/96),0)&" ft ")&INCHES_IN_EIGHTHS(MOD(ABS(eighths),96))',
    "12 inches a foot, eighths of an inch",
  ),
];

/** The formulas that sentences for people outside the office call; none where there are no such sentences. */
export function wordFormulas(sheets: readonly SheetDeclaration[]): readonly NamedFormula[] {
  const read = sheets.some(({ blocks }) =>
    blocks.some((block) => {
      if (block.kind !== "table" && !("cells" in block)) return false;
      const cells = Object.values(block.kind === "table" ? block.columns : block.cells);
      return cells.some((cell) => cell.kind === "calc" && cell.reader !== undefined);
    }),
  );
  return read ? formulas : [];
}
