import type { Cell } from "../template/model.js";
import type { MatchedCell } from "../workbook/match/result.js";
import type { Finding } from "./finding.js";
import type { ChangedInput } from "./moved-price.js";
import { heldBy, placeOf, type Subject } from "./subject.js";

/** A cell whose name was pointed at another one, while it stands where it always stood. */
export interface StrayCell {
  readonly cell: Cell;
  readonly home: MatchedCell;
  /** What the name stands for now. */
  readonly there: MatchedCell;
}

/**
 * The workbook with such cells read where they belong, so that nothing is said of inputs which only follows from their
 * names. A cell that went with its name, cut and pasted, left nothing behind and is read where it went.
 */
export function readAtHome(subject: Subject): { subject: Subject; stray: readonly StrayCell[] } {
  const { content, model, match } = subject;
  if (match.stray.length === 0) return { subject, stray: [] };
  const held = new Map<string, number>();
  for (const place of match.at.values()) {
    held.set(placeOf(place), (held.get(placeOf(place)) ?? 0) + 1);
  }
  const stray = match.stray.flatMap(({ name, home }): StrayCell[] => {
    const cell = model.byId.get(name);
    const there = match.at.get(name);
    if (cell === undefined || home === undefined || there === undefined) return [];
    if (held.has(placeOf(home))) return [];
    const sheet = content.sheets.find((one) => one.name === home.sheet);
    const own = sheet?.cells.get(home.address) ?? { value: null };
    const left = own.value !== null || own.formula !== undefined;
    const isOthers = (held.get(placeOf(there)) ?? 0) > 1;
    return left || isOthers ? [{ cell, home: { ...home, cell: own }, there }] : [];
  });
  const at = new Map(match.at);
  for (const { cell, home } of stray) at.set(cell.id, home);
  const back = new Set(stray.map(({ cell }) => cell.id));
  const moved = match.moved.filter(({ id }) => !back.has(id));
  return { subject: { content, model, match: { ...match, at, moved } }, stray };
}

/** The values that formulas take for such cells' own, of those that are given. */
export const takenFor = (stray: readonly StrayCell[]): ChangedInput[] =>
  stray.flatMap(({ cell, there }) =>
    cell.native === undefined ? [{ cell, before: heldBy(cell, there.cell.value) }] : [],
  );

/** The findings of places, those of names with what they move. */
export const withMoves = (
  findings: readonly Finding[],
  moves: ReadonlyMap<Cell, string>,
): Finding[] => {
  const byName = new Map([...moves].map(([cell, move]) => [cell.name, move]));
  return findings.map((one) =>
    one.code === "name-moved"
      ? { ...one, found: one.found + (byName.get(one.name ?? "") ?? "") }
      : one,
  );
};

/** A stored result that does not follow, as it is told while names point elsewhere. */
export const namesFirst = (one: Finding): Finding => ({
  ...one,
  advice: "First point the names back, as told with each; then recalculate everything and save.",
});
