import type { Area } from "../../workbook/read/area.js";
import type { WorkbookContent } from "../../workbook/read/content.js";
import type { SheetLook, WorkbookLook } from "../../workbook/read/look/content.js";
import { orWriteAgain } from "../cures.js";
import type { Finding } from "../finding.js";
import type { SheetPair } from "../sheet-pairs.js";

/** A sheet whose look is compared with that of the freshly written one. */
export interface LookPair extends SheetPair {
  readonly now: SheetLook;
  readonly then: SheetLook;
  /** As it was when it was written, with the texts of that time; absent where nobody needs it or knows. */
  readonly written?: SheetLook | undefined;
  /** The whole workbook as it was when it was written. */
  readonly onceContent?: WorkbookContent | undefined;
  readonly nowBook: WorkbookLook;
  readonly thenBook: WorkbookLook;
  readonly content: WorkbookContent;
  readonly freshContent: WorkbookContent;
  /** The places that it keeps for pictures, where they stand now. */
  readonly slots: readonly Area[];
  /** The page is given to customers, suppliers or crew. */
  readonly handout: boolean;
  /** It prints nothing as it is written until something is typed. */
  readonly awaited: boolean;
}

/** A finding about how something appears. */
export function lookFinding(
  where: string,
  found: string,
  expected: string,
  more: Partial<Finding> = {},
): Finding {
  return {
    grade: "doubtful",
    code: "look",
    where,
    found,
    expected,
    advice: `Look at the place and put it back, ${orWriteAgain}`,
    ...more,
  };
}
