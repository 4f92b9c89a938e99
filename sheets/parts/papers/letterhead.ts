import { calc, type PaperRow, place, row, text } from "../../../engine/template/index.js";

/** The first lines of a page of the office, where it is a draft: it says so before all else. */
export const draftOf = (page: string, [lines, drafts]: readonly [column: string, drafts: number]): PaperRow[] =>
  Array.from({ length: drafts }, (_, i) =>
    row(3, place([1, 12], "alarm", [`${page}_draft_${i + 1}`, calc(text, `INDEX(${lines},${i + 1})&""`, "")])),
  );

/** The head of a page of the office: a draft says so first; then the company, and its logo, where the office book names one. */
export const letterhead = (page: string, drafts: readonly [column: string, drafts: number]): PaperRow[] => [
  ...draftOf(page, drafts),
  row(
    28,
    place([1, 9], "name", [`${page}_company`, calc(text, "company", "")]),
    place([10, 3], "logo", "", { down: 2 }),
  ),
  row(18, place([1, 9], "small", [`${page}_contact`, calc(text, "company_contact", "")])),
  row(8),
];
