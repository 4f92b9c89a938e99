import type { Cell } from "../template/model.js";
import { writeAgain } from "./cures.js";
import type { Finding } from "./finding.js";
import type { Subject } from "./subject.js";

/** A sheet of the template that the workbook no longer has, under no name, with the cells that stood on it. */
export interface GoneSheet {
  readonly name: string;
  readonly cells: readonly Cell[];
}

export function goneSheets({ content, model, match }: Subject): GoneSheet[] {
  const here = new Set(content.sheets.map(({ name }) => name.toLowerCase()));
  const isGone = (name: string) => !match.sheets.has(name) && !here.has(name.toLowerCase());
  const sheets = new Map<string, Cell[]>();
  for (const cell of model.cells) {
    const own = sheets.get(cell.sheet);
    if (own !== undefined) own.push(cell);
    else if (isGone(cell.sheet)) sheets.set(cell.sheet, [cell]);
  }
  return [...sheets].map(([name, cells]) => ({ name, cells }));
}

/** What is to be said of sheets that are gone: the names that stood on them are told with them. */
export const goneFindings = (gone: readonly GoneSheet[]): Finding[] =>
  gone.map(({ name, cells }) => {
    const names = [...new Set(cells.filter(({ implied }) => !implied).map((cell) => cell.name))];
    const formulas = cells.filter(({ native }) => native !== undefined).length;
    const inputs = cells.filter(({ declaration }) => declaration.kind === "input").length;
    return {
      grade: "wrong",
      code: "sheet-missing",
      where: `sheet ${name}`,
      names,
      found: `the sheet is gone, with its ${counted(names.length, "name")} and ${counted(formulas, "formula")}`,
      expected: `the sheet ${name}`,
      advice:
        inputs === 0
          ? writeAgain
          : `Its ${counted(inputs, "input")} went with it: write the bid again from its job record, or go back to the workbook as it was before.`,
    };
  });

const counted = (count: number, what: string): string =>
  `${count} ${what}${count === 1 ? "" : "s"}`;

/** Areas of these sheets, as formulas of other sheets spell them. */
const areasOn = (gone: readonly GoneSheet[]): RegExp => {
  const sheets = gone.map(({ name }) =>
    name.replaceAll("'", "''").replace(/[.*+?^${}()|[\]\\]/g, "\\$&"),
  );
  return new RegExp(`'(?:${sheets.join("|")})'!\\$?[A-Z]+\\$?\\d+(?::\\$?[A-Z]+\\$?\\d+)?`, "g");
};

/** A formula as programs leave it once these sheets were deleted; undefined where it reads none of them. */
export function withoutSheets(gone: readonly GoneSheet[], formula: string): string | undefined {
  if (gone.length === 0) return undefined;
  const left = formula.replace(areasOn(gone), "#REF!");
  return left === formula ? undefined : left;
}

/** Results of other sheets that read a sheet which is gone. */
export const readsGone = (gone: readonly GoneSheet[], { code, found }: Finding): boolean =>
  gone.length > 0 && code === "value-stale" && found.startsWith("the stored result #REF!");

/** The findings, the last of those of sheets that are gone with the count of what followed and is left out. */
export function withFollowing(findings: readonly Finding[], following: number): Finding[] {
  const gone = findings.filter(({ code }) => code === "sheet-missing");
  if (following === 0) return [...findings];
  const what = gone.length === 1 ? "it" : "these sheets";
  const more =
    following === 1
      ? `; 1 cell of another sheet reads ${what} in vain`
      : `; ${following} cells of other sheets read ${what} in vain`;
  return findings.map((one) => (one === gone.at(-1) ? { ...one, found: one.found + more } : one));
}
