import type { RawCellContent } from "hyperformula";
import type { JudgeTask } from "./judge-task.js";

/** Few enough to be done before a command asks the first of its own. */
const rows = 120;
const columns = 300;

/**
 * Questions of no job. While a judge has nothing to judge yet it answers these: hyperformula makes its reader of formulas with
 * the first that it is given, and V8 makes code of what is called, so that a job's own are answered sooner.
 */
export const practice = (): JudgeTask => ({
  sheets: {
    Questions: Array.from({ length: rows }, (_, i) => [
      formula(i),
      i,
      i / 3,
      i % 2 === 0 ? i : `'text ${i}`,
    ]),
    Columns: Array.from({ length: columns }, (_, i): RawCellContent[] => [i, `'code ${i}`]),
  },
  places: Array.from({ length: rows }, (_, i) => [0, i, 0]).flat(),
});

/** Of the kinds that most questions are. */
function formula(i: number): string {
  const line = i + 1;
  switch (i % 6) {
    case 0:
      return `=(B${line}+${i})*C${line}-D${line}/2`;
    case 1:
      return `=LEN(D${line})>${i}`;
    case 2:
      return `=MAX(B${line},C${line}*${i})`;
    case 3:
      return `=B${line}&"x"&D${line}`;
    case 4:
      return `=SUMPRODUCT((Columns!$A$1:$A$40=B${line})*1,Columns!$A$1:$A$40)`;
    default:
      return `=D${line}<>""`;
  }
}
