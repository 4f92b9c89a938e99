import { trailSheet, writtenSheet } from "../../workbook/match/trail-columns.js";
import { slotsOf } from "../../workbook/pictures/slots.js";
import type { WorkbookContent } from "../../workbook/read/content.js";
import type { Finding } from "../finding.js";
import type { SheetPair } from "../sheet-pairs.js";
import type { Subject } from "../subject.js";
import { checkCellLooks } from "./cells.js";
import type { LookPair } from "./compared.js";
import { checkOverCells } from "./over-cells.js";
import { checkPage } from "./page.js";
import { checkProgram } from "./program.js";
import { checkProtection } from "./protection.js";
import { checkRules, rewrittenAsOne } from "./rules.js";
import { checkSpaces } from "./spaces.js";
import { checkTyping } from "./typing.js";

/**
 * Holds how a workbook looks against a fresh writing of the same job: whatever changes what a person reads on
 * screen or paper, or what a program does with the workbook. What known programs change by saving is passed over.
 * Nothing is found where the workbook was read without its look.
 *
 * @param once the workbook as it was when it was written, where it is needed and known
 */
export function checkLook(
  { content, model }: Subject,
  fresh: WorkbookContent,
  pairs: readonly SheetPair[],
  once?: WorkbookContent,
): Finding[] {
  const handouts = new Set(model.sheets.filter(({ handout }) => handout).map(({ name }) => name));
  const awaiting = new Set(
    model.sheets.filter(({ printedOnce }) => printedOnce !== undefined).map(({ name }) => name),
  );
  const slots = slotsOf(model);
  const looks = pairs.flatMap((pair): LookPair[] => {
    const [now, then] = [pair.found.look, pair.fresh.look];
    const [nowBook, thenBook] = [content.look, fresh.look];
    if (!now || !then || !nowBook || !thenBook) return [];
    const handout = handouts.has(pair.fresh.name);
    const written = once?.sheets.find(({ name }) => name === pair.fresh.name)?.look;
    const places = slots.filter(({ sheet }) => sheet === pair.fresh.name);
    const here = places.flatMap(({ from, to }) => {
      const [start, end] = [pair.map.to(from), pair.map.to(to)];
      return start === undefined || end === undefined ? [] : [{ from: start, to: end }];
    });
    const books = { nowBook, thenBook, content, freshContent: fresh, onceContent: once };
    const awaited = awaiting.has(pair.fresh.name);
    return [{ ...pair, ...books, written, now, then, slots: here, handout, awaited }];
  });
  return rewrittenAsOne([
    ...checkProgram(content, looks),
    ...checkProtection(looks),
    ...looks.flatMap((pair) =>
      pair.fresh.name === trailSheet || pair.fresh.name === writtenSheet
        ? checkOverCells(pair, looks)
        : [
            ...checkCellLooks(pair),
            ...checkSpaces(pair),
            ...checkRules(pair),
            ...checkTyping(pair),
            ...checkPage(pair),
            ...checkOverCells(pair, looks),
          ],
    ),
  ]);
}
