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
