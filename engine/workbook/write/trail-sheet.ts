import type { Value } from "../../formula/value.js";
import { recorded, unitFor } from "../../job/trail/inputs.js";
import { inputOrigins } from "../../job/trail/origin.js";
import type { InputValue } from "../../template/declare.js";
import type { Cell, Model } from "../../template/model.js";
import { trailColumns, trailSheet, writtenSheet } from "../match/trail-columns.js";
import type { Book } from "./book/book.js";
import type { Look, Sheet } from "./book/sheet.js";
import { textHeight } from "./grid.js";
import type { Identity } from "./identity.js";
import { styles, titleHeight } from "./look.js";
import { printNothing } from "./print-area.js";
import { linkBack } from "./tabs.js";

const widths = [6, 26, 18, 9, 22, 18, 24, 40, 34, 34];

type Content = InputValue | null;

/** Numbers among texts, in a list that is read line by line. */
const toTheLeft = {
  ...styles.note,
  alignment: { ...styles.note.alignment, horizontal: "left" },
} as const;

/** Where the column headings of the first list stand. */
const headingsLine = 5;

/**
 * The sheet that says where each value comes from: the inputs and the office-book figures as
 * this workbook was written, then every change of the trail. Reading it back shows what was
 * changed in the workbook since. Returns which inputs it tells of as given for this job.
 */
export function writeTrail(
  book: Book,
  model: Model,
  values: readonly Value[],
  identity: Identity,
): ReadonlySet<Content | undefined> {
  const { trail = [] } = identity;
  const origins = inputOrigins(model, values, trail);
  const given = givenRows(model, values, identity, origins);
  // the headings of the long list stay in sight, but not over a longer one with headings of its own
  const frozenLines = given.length >= trail.length ? headingsLine : 2;
  const sheet = book.addSheet(trailSheet, { view: { frozenLines, showGridLines: false } });
  widths.forEach((width, i) => {
    sheet.widths[i + 1] = width;
  });
  put(sheet, 1, 1, "Trail", styles.sheetTitle);
  put(sheet, 2, 1, "Where every value comes from, and what was changed when.", styles.purpose);
  sheet.getRow(1).height = titleHeight;
  let line = 4;
  const part = (heading: string, columns: readonly string[], rows: readonly Content[][]) => {
    columns.forEach((_, i) => {
      put(sheet, line, i + 1, null, styles.heading);
    });
    put(sheet, line, 1, heading, styles.heading);
    columns.forEach((text, i) => {
      put(sheet, line + 1, i + 1, text || null, styles.header);
    });
    rows.forEach((row, i) => {
      row.forEach((value, column) => {
        put(sheet, line + 2 + i, column + 1, value, toTheLeft);
      });
      const texts = row.map((value, column) =>
        textHeight(String(value ?? ""), widths[column] ?? 20),
      );
      sheet.getRow(line + 2 + i).height = Math.max(...texts);
    });
    line += rows.length + 3;
  };
  const { values: valueColumns, entries } = trailColumns;
  part("Values given for this job", valueColumns, given);
  part("All other values", valueColumns, sharedRows(model, values, identity, origins));
  const changes = trail.map((one) => {
    const { number, input, new: now, unit, from, by, time, note, old, hash } = one;
    return [number, input, now, unit, from, by, time, note ?? null, old, hash];
  });
  part("Changes", entries, changes);
  sheet.pageSetup = { orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0 };
  linkBack(sheet, sheet.columnCount + 1);
  printNothing(sheet);
  return new Set(given.map(([, id]) => id));
}

const shared: ReadonlySet<string> = new Set(["office book", "template default"]);

/** The inputs that somebody gave for this job: all but those that have the office's or the template's value. */
export function givenRows(
  model: Model,
  values: readonly Value[],
  { trail = [] }: Pick<Identity, "trail">,
  origins = inputOrigins(model, values, trail),
): Content[][] {
  return model.cells.flatMap((cell) => {
    const origin = origins.get(cell.id);
    if (origin === undefined || (origin.by === undefined && shared.has(origin.from))) return [];
    const value = recorded(cell, values[cell.index]);
    if (value === null && origin.by === undefined) return [];
    const { from, by = null, time = null, note = null } = origin;
    return [[null, cell.id, value, unitFor(cell), from, by, time, note, labelOf(cell)]];
  });
}

/** How the lists tell the mark of the office book. */
export const bookMarkSaid = (mark: string): string => `mark ${mark}`;

/** A line for what comes from the office book and one for the template's defaults, each with how many values. */
export function sharedRows(
  model: Model,
  values: readonly Value[],
  {
    book,
    bookAsOf,
    bookMark,
    trail = [],
  }: Pick<Identity, "trail" | "book" | "bookAsOf" | "bookMark">,
  origins = inputOrigins(model, values, trail),
): Content[][] {
  const count = (wanted: string) =>
    [...origins].filter(([id, { from, by }]) => {
      const cell = model.byId.get(id);
      return from === wanted && by === undefined && isFilled(values[cell?.index ?? -1]);
    }).length;
  const figures = model.cells.filter(({ declaration: { kind, beside }, index }) => {
    return kind === "book" && !beside && isFilled(values[index]);
  }).length;
  const mark = bookMarkSaid(bookMark);
  const line = (name: string, values: number, from: string, ofBook: boolean, means: string) => {
    const identity = ofBook ? [book, bookAsOf, mark] : [null, null, null];
    return [null, name, values, "values", from, ...identity, means];
  };
  const copied = "Prices, rates and other rows copied from the office book";
  return [
    line(
      "office rules",
      count("office book"),
      "office book",
      true,
      "Inputs as the office book has them",
    ),
    line("office rows", figures, "office book", true, copied),
    line(
      "defaults",
      count("template default"),
      "template default",
      false,
      "Inputs as the template has them",
    ),
  ];
}

const isFilled = (value: Value | undefined): boolean =>
  value !== undefined && value !== null && value !== "";

/** Every value that is not among those given, for an audit to hold the workbook against. */
export function writeAsWritten(
  book: Book,
  model: Model,
  values: readonly Value[],
  given: ReadonlySet<Content | undefined>,
): void {
  const sheet = book.addSheet(writtenSheet, { hidden: true });
  sheet.widths[2] = 40;
  sheet.widths[3] = 40;
  put(sheet, 1, 1, writtenSheet, styles.sheetTitle);
  sheet.getRow(1).height = titleHeight;
  const purpose =
    "What the other inputs and the copies of the office book were when this was written, for an audit.";
  put(sheet, 2, 1, purpose, styles.purpose);
  trailColumns.written.forEach((text, i) => {
    put(sheet, 4, i + 1, text || null, styles.header);
  });
  let line = 5;
  for (const cell of model.cells) {
    const { kind } = cell.declaration;
    const value = kind === "input" || kind === "book" ? recorded(cell, values[cell.index]) : null;
    if (value === null || given.has(cell.id)) continue;
    put(sheet, line, 2, cell.id, toTheLeft);
    put(sheet, line, 3, value, toTheLeft);
    line += 1;
  }
  printNothing(sheet);
}

const labelOf = ({ declaration }: Cell): string => declaration.label;

function put(sheet: Sheet, line: number, column: number, value: Content, style: Look): void {
  const target = sheet.getCell(line, column);
  target.value = value === "" ? null : value;
  target.style = style;
}
