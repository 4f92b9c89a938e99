import type { Value } from "../formula/value.js";
import { serialOf } from "../job/date.js";
import { markOf, recorded } from "../job/trail/inputs.js";
import { inputOrigins } from "../job/trail/origin.js";
import { backwards, verifyTrail } from "../job/trail/verify.js";
import type { InputValue } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import type { WorkbookIdentity } from "../workbook/match/identity.js";
import { trailColumns, trailSheet } from "../workbook/match/trail-columns.js";
import { readTrailSheet, type WorkbookTrail } from "../workbook/match/trail-sheet.js";
import type { CellValue } from "../workbook/read/content.js";
import { bookMarkSaid, givenRows, sharedRows } from "../workbook/write/trail-sheet.js";
import type { Finding } from "./finding.js";
import { formulaIn, grouped, heldBy, heldValue, placeOf, type Subject, said } from "./subject.js";

/** Holds the inputs and prices against what the Trail sheet says of them, and the trail against its hashes. */
export function checkTrail(subject: Subject, identity: WorkbookIdentity): Finding[] {
  const trail = readTrailSheet(subject.content);
  if (trail === undefined) {
    return [
      trailFinding(
        "The workbook has no sheet Trail",
        "the sheet Trail, with the inputs as written",
        "Write the bid again from the job record: without it nobody can tell what was changed.",
      ),
    ];
  }
  return [
    ...chain(trail, identity),
    ...changedSince(subject, trail),
    ...retold(subject, identity, trail),
    ...origins(subject, trail),
  ];
}

const trailFinding = (found: string, expected: string, advice: string): Finding => ({
  grade: "wrong",
  code: "trail",
  where: "the trail",
  found,
  expected,
  advice,
});

function chain(trail: WorkbookTrail, identity: WorkbookIdentity): Finding[] {
  const advice = "Compare with the job record, whose trail counts.";
  const whole = "a trail as it was written";
  const found = trail.faults.map((fault) => trailFinding(fault, whole, advice));
  if (identity.trailHead === undefined) {
    found.push(
      trailFinding(
        "The custom property with the last hash of the trail is missing",
        "the property as written",
        advice,
      ),
    );
  }
  for (const { sentence } of verifyTrail(trail.entries, identity.trailHead)) {
    found.push(trailFinding(sentence, whole, advice));
  }
  for (const { sentence } of backwards(trail.entries)) {
    const ask = "Ask whose clock was wrong; entries cannot be put in afterwards.";
    found.push({
      ...trailFinding(sentence, "entries in the order of time", ask),
      grade: "doubtful",
    });
  }
  return found;
}

/** Inputs and prices that are no longer what they were when the workbook was written. */
function changedSince({ model, match }: Subject, { written }: WorkbookTrail): Finding[] {
  const inputs: Finding[] = [];
  const prices: Finding[] = [];
  for (const cell of model.cells) {
    const { kind } = cell.declaration;
    const place = match.at.get(cell.id);
    if ((kind !== "input" && kind !== "book") || place === undefined) continue;
    const now = recorded(cell, heldBy(cell, place.cell.value));
    const then = written.get(cell.id) ?? null;
    if (formulaIn(cell, place.cell) !== undefined || alike(now, then)) continue;
    const found = `${said(now)}; when the workbook was written it was ${said(then)}`;
    const common = { where: placeOf(place), name: cell.id, found } as const;
    if (kind === "book") {
      prices.push({
        ...common,
        grade: "wrong",
        code: "price-changed",
        expected: `${said(then)}, from the office book`,
        advice: "Change prices in the office book, and write the bid again.",
      });
    } else {
      inputs.push({
        ...common,
        grade: "doubtful",
        code: "input-untold",
        expected: "an entry in the trail for every change",
        advice: "Bring the change into the job record with rillbook take, which asks who and why.",
      });
    }
  }
  return [...inputs, ...prices];
}

const alike = (a: InputValue | null, b: InputValue | null): boolean =>
  typeof a === "number" && typeof b === "number"
    ? Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b))
    : a === b;

/** What the inputs as written stand on. */
function origins({ model, match }: Subject, trail: WorkbookTrail): Finding[] {
  const { entries } = trail;
  const values = valuesAsWritten(model, trail);
  const from = inputOrigins(model, values, entries);
  const told = new Map(entries.map((entry) => [entry.input, entry]));
  const groups: Record<"contradicted" | "untold" | "assumption" | "default", Finding[]> = {
    contradicted: [],
    untold: [],
    assumption: [],
    default: [],
  };
  for (const cell of model.cells) {
    const origin = from.get(cell.id)?.from;
    const place = match.at.get(cell.id);
    if (origin === undefined || place === undefined) continue;
    const value = recorded(cell, values[cell.index]);
    if (value === null) continue;
    const common = { where: placeOf(place), name: cell.id, found: said(value) } as const;
    const entry = told.get(cell.id);
    if (origin === "not in the trail") {
      if (entry !== undefined) {
        groups.contradicted.push({
          ...common,
          grade: "doubtful",
          code: "input-untold",
          expected: `${said(entry.new)}, which entry ${entry.number} of the trail gave it`,
          advice: "Say with rillbook set where the value comes from.",
        });
      } else groups.untold.push(toKnow(common, "input-untold", "an entry that tells its origin"));
    } else if (origin === "assumption") {
      groups.assumption.push(toKnow(common, "input-assumed", "a measured or quoted value in time"));
    } else if (origin === "template default") {
      groups.default.push(toKnow(common, "input-assumed", "more than the template's default"));
    }
  }
  return Object.values(groups).flatMap((group) => grouped(group, 1));
}

/** Lines of the lists of values whose words are not those that the trail and the office book give. */
function retold({ model }: Subject, identity: WorkbookIdentity, trail: WorkbookTrail): Finding[] {
  const values = valuesAsWritten(model, trail);
  const { book = "", bookAsOf = "", bookMark = "" } = identity;
  const expected = [
    ...givenRows(model, values, { trail: trail.entries }),
    ...sharedRows(model, values, { trail: trail.entries, book, bookAsOf, bookMark }),
  ];
  const unmarked = bookMarkSaid("");
  const findings = expected.flatMap((row): Finding[] => {
    const id = String(row[1]);
    const line = trail.said.get(id);
    // a line that is missing changes its list's mark
    if (line === undefined) return [];
    const differs = row.findIndex((text, i) => {
      const here = line.cells[i] === "" ? null : (line.cells[i] ?? null);
      const same = typeof text === "string" ? text.trim() === String(here ?? "").trim() : true;
      // that the mark of the book is gone is told with the properties
      if (identity.bookMark === undefined && text === unmarked) return false;
      return i >= 3 && !same && !(text === "" && here === null);
    });
    const put = row.findIndex((text, i) => i >= 3 && text === null && !isBlank(line.cells[i]));
    const at = differs >= 0 ? differs : put;
    if (at < 0) return [];
    const what = (trailColumns.values[at] ?? "").toLowerCase();
    return [
      {
        grade: "wrong",
        code: "trail",
        where: `${trailSheet}!${line.address}`,
        name: id,
        found: `${what}: ${said(heldValue(line.cells[at] ?? null))}`,
        expected: `${said(row[at] ?? null)}, by the entries of the trail`,
        advice: "Compare with the job record, whose trail counts.",
      },
    ];
  });
  return grouped(findings, 5);
}

const isBlank = (value: CellValue | undefined): boolean =>
  value === undefined || value === null || value === "";

function toKnow(
  common: Pick<Finding, "where" | "name" | "found">,
  code: "input-untold" | "input-assumed",
  expected: string,
): Finding {
  const advice = "Where the job is known better, say so: rillbook set name=value --from.";
  return { ...common, grade: "to know", code, expected, advice };
}

/** The inputs and the office book's rows as the workbook was written, by the index of the cell; all else is null. */
export const valuesAsWritten = (model: Model, { written }: WorkbookTrail): Value[] =>
  model.cells.map((cell) => heldAs(cell, written.get(cell.id) ?? null));

const heldAs = (cell: Cell, value: InputValue | null): Value =>
  typeof value === "string" && cell.declaration.quantity.kind === "date"
    ? (serialOf(value) ?? null)
    : value;

/** Do the lists of inputs and prices on the Trail sheet still carry the marks they were written with? */
export function checkMarks({ content, model }: Subject, identity: WorkbookIdentity): Finding[] {
  const trail = readTrailSheet(content);
  if (trail === undefined) return [];
  const marks = [
    ["inputs", identity.inputsMark, markOf(model, "input", ({ id }) => trail.written.get(id))],
    ["prices", identity.pricesMark, markOf(model, "book", ({ id }) => trail.written.get(id))],
  ] as const;
  return marks.flatMap(([what, kept, mark]) =>
    mark === kept
      ? []
      : [
          trailFinding(
            kept === undefined
              ? `The custom property with the mark of the ${what} is missing`
              : `The ${what} as written, on sheet Trail, do not fit their mark: the list was changed`,
            "the list and the property as written",
            what === "inputs"
              ? "Compare with the job record."
              : "Hold the prices against the office book: rillbook audit --office.",
          ),
        ],
  );
}
