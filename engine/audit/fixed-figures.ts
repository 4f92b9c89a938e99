import type { Value } from "../formula/value.js";
import type { Finding } from "./finding.js";
import { agree, formulaIn, heldBy, placeOf, type Subject, saidIn } from "./subject.js";

/** Published figures, and words that the template fixes, that are not the template's. */
export function checkPublished({ model, match }: Subject): Finding[] {
  return model.cells.flatMap((cell): Finding[] => {
    const place = match.at.get(cell.id);
    const isFixed = cell.declaration.kind === "published" || cell.fixed !== undefined;
    if (!isFixed || place === undefined) return [];
    const [found, expected] = [heldBy(cell, place.cell.value), cell.fixed ?? null];
    if (formulaIn(cell, place.cell) !== undefined || agree(found, expected)) return [];
    const source = cell.declaration.source ?? "the template";
    return [
      {
        grade: "wrong",
        code: "published-changed",
        where: placeOf(place),
        name: cell.id,
        found: saidIn(model, cell, found, expected),
        expected: `${saidIn(model, cell, expected, found)} (${source})`,
        advice:
          "Put the published figure back. Where it does not suit the job, change the input that chooses it.",
      },
    ];
  });
}

/** Prices that are not those of the office book, cell by cell. `book`: the values the book gives. */
export function checkPrices({ model, match }: Subject, book: readonly Value[]): Finding[] {
  return model.cells.flatMap((cell): Finding[] => {
    const place = match.at.get(cell.id);
    if (cell.declaration.kind !== "book" || place === undefined) return [];
    const [found, expected] = [heldBy(cell, place.cell.value), book[cell.index] ?? null];
    if (formulaIn(cell, place.cell) !== undefined || agree(found, expected)) return [];
    return [
      {
        grade: "wrong",
        code: "price-changed",
        where: placeOf(place),
        name: cell.id,
        found: saidIn(model, cell, found, expected),
        expected: `${saidIn(model, cell, expected, found)}, as the office book has it`,
        advice: "Change prices in the office book, and write the bid again.",
      },
    ];
  });
}
