import { count, date, formula, number, text } from "../../engine/template/index.js";

const MONTH_SAID = formula(
  "MONTH_SAID",
  "The name of a month, by its number from 1 to 12",
  { month: number },
  text,
  'CHOOSE(MAX(1,MIN(12,month)),"January","February","March","April","May","June","July","August","September","October","November","December")',
  "definition",
);

const DATE_SAID = formula(
  "DATE_SAID",
  "A date written out: March 15, 2027",
  { day: date },
  text,
  'MONTH_SAID(MONTH(day))&" "&FIXED(DAY(day),0)&", "&FIXED(INT(YEAR(day)/100),0)&RIGHT("0"&FIXED(MOD(YEAR(day),100),0),2)',
  "the year goes in two parts, since FIXED would part its thousands, and TEXT() changes with the user's language",
);

const JOINED = formula(
  "JOINED",
  "A part of a line, after what parts it from the one before; nothing where it was not given",
  { before: text, said: text },
  text,
  'IF(LEN(said)>0,before&said,"")',
  "definition",
);

const CAPITALIZED = formula(
  "CAPITALIZED",
  "Words as a line of a list begins with them: the first letter is a capital",
  { words: text },
  text,
  "UPPER(LEFT(words,1))&MID(words,2,LEN(words))",
  "definition",
);

const FAILURES_SAID = formula(
  "FAILURES_SAID",
  "How many checks fail, and which one is first, in words; nothing where none fails",
  { failed: count, check: text, sheet: text },
  text,
  'IF(failed=0,"",IF(failed=1,"1 check fails",FIXED(failed,0)&" checks fail, the first")&": "&check&" (sheet "&sheet&")")',
  "definition",
);

const TWO_FIGURES = formula(
  "TWO_FIGURES",
  "A figure to its first two digits, as it stands behind the word about",
  { figure: number },
  number,
  "IF(figure>0,ROUND(figure,1-INT(LOG10(figure))),0)",
  "definition",
);

/** What pages say of figures. */
export const wordFormulas = [TWO_FIGURES, MONTH_SAID, DATE_SAID, JOINED, CAPITALIZED, FAILURES_SAID] as const;
