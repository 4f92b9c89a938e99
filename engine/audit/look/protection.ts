import { booleanOf } from "../../workbook/read/text.js";
import type { Finding } from "../finding.js";
import { type LookPair, lookFinding } from "./compared.js";

const isProtected = ({ settings }: LookPair["now"]): boolean =>
  booleanOf(settings.get("sheetProtection.sheet")) === true;

/** Sheets whose formulas can be typed over now, told as one note: to unlock a sheet is no fault by itself. */
export function checkProtection(pairs: readonly LookPair[]): Finding[] {
  const open = pairs.filter(({ now, then }) => isProtected(then) && !isProtected(now));
  if (open.length === 0) return [];
  const names = open.map(({ found }) => found.name).join(", ");
  return [
    lookFinding(
      open.length === 1 ? `sheet ${names}` : `${open.length} sheets: ${names}`,
      "the protection is taken off",
      "protected, without a password",
      {
        grade: "to know",
        advice: "Protect it again: formulas can be typed over by mistake while it is open.",
      },
    ),
  ];
}
