import type { Value } from "../formula/value.js";
import { serialOf } from "../job/date.js";
import { nobodyNamed } from "../job/trail/entry.js";
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
import { saySo } from "./cures.js";
import type { Finding } from "./finding.js";
import { grouped, heldValue, placeOf, type Subject, said, saidIn } from "./subject.js";

/**
 * Holds the trail against its hashes, the lists of values against what it says of them, and tells what the inputs stand
 * on. Inputs that were changed since are told by `untold-inputs.ts`, prices by `changed-prices.ts`.
 */
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

/** What the inputs as written stand on. */
function origins({ model, match }: Subject, trail: WorkbookTrail): Finding[] {
  const { entries } = trail;
  const values = valuesAsWritten(model, trail);
  const from = inputOrigins(model, values, entries);
  const told = new Set(entries.map(({ input }) => input));
  const groups: Record<"unnamed" | "untold" | "assumption" | "default", Finding[]> = {
    unnamed: [],
    untold: [],
    assumption: [],
    default: [],
  };
  for (const cell of model.cells) {
    const origin = from.get(cell.id)?.from;
    const place = match.at.get(cell.id);
    if (origin === undefined || place === undefined) continue;
    const value = recorded(cell, values[cell.index]);
    const common = { where: placeOf(place), name: cell.id } as const;
    const figure = saidIn(model, cell, value);
    if (from.get(cell.id)?.by === nobodyNamed) groups.unnamed.push(unnamed(common, figure));
    else if (value === null) continue;
    else if (origin === "not in the trail") {
      if (!told.has(cell.id)) groups.untold.push(untold(common, figure));
    } else if (origin === "assumption") {
      groups.assumption.push(assumed(common, figure));
    } else if (origin === "template default") {
      groups.default.push(byDefault(common, figure));
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

type Common = Pick<Finding, "where" | "name">;

const untold = (common: Common, figure: string): Finding => ({
  ...common,
  grade: "to know",
  code: "input-untold",
  found: `${figure}, of which the trail tells nothing`,
  expected: "an entry that tells its origin",
  advice: saySo,
});

const unnamed = (common: Common, figure: string): Finding => ({
  ...common,
  grade: "doubtful",
  code: "input-untold",
  found: `${figure}, of which the trail does not say who changed it`,
  expected: "a name in the trail for every change",
  advice: "Ask who changed it, and name them: rillbook bid <workbook> --by <who> --note <why>.",
});

const assumed = (common: Common, figure: string): Finding => ({
  ...common,
  grade: "to know",
  code: "input-assumed",
  found: `${figure}, an assumption`,
  expected: "a measured or quoted value in time",
  advice: saySo,
});

const byDefault = (common: Common, figure: string): Finding => ({
  ...common,
  grade: "to know",
  code: "input-assumed",
  found: `${figure}, the template's default`,
  expected: "the job's own value, where the default does not suit it",
  advice: saySo,
});

/** The inputs and the office book's rows as the workbook was written, by the index of the cell; all else is null. */
export const valuesAsWritten = (model: Model, { written }: WorkbookTrail): Value[] =>
  model.cells.map((cell) => heldAs(cell, written.get(cell.id) ?? null));

/** A recorded value as its cell holds it: dates as serial numbers. */
export const heldAs = (cell: Cell, value: InputValue | null): Value =>
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
