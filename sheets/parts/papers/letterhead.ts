import { calc, type PaperRow, place, row, text } from "../../../engine/template/index.js";

/** The head of a page of the office: a draft says so first; then the company, and its logo, where the office book names one. */
export const letterhead = (page: string, [lines, drafts]: readonly [column: string, drafts: number]): PaperRow[] => {
  const draft = (line: number) =>
    row(3, place([1, 12], "alarm", [`${page}_draft_${line}`, calc(text, `INDEX(${lines},${line})&""`, "")]));
  return [
    ...Array.from({ length: drafts }, (_, i) => draft(i + 1)),
    row(
      28,
      place([1, 9], "name", [`${page}_company`, calc(text, "company", "")]),
      place([10, 3], "logo", "", { down: 2 }),
    ),
    row(18, place([1, 9], "small", [`${page}_contact`, calc(text, "company_contact", "")])),
    row(8),
  ];
};
