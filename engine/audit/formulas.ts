import { addressOf as templateAddress } from "../address.js";
import { print } from "../formula/print.js";
import type { Reference } from "../formula/tree.js";
import { areaCells, corners } from "../template/area.js";
import { type Cell, cellOf, columnOf, type Model } from "../template/model.js";
import { pickedFromOneRow } from "../template/one-row.js";
import { xlsxFormula } from "../template/printed.js";
import type { MatchedCell, WorkbookMatch } from "../workbook/match/result.js";
import { addressOf, type Position, positionOf } from "../workbook/read/address.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { orWriteAgain } from "./cures.js";
import type { Finding } from "./finding.js";
import { goneSheets, withoutSheets } from "./gone-sheets.js";
import { isSpelledAlike, type NameAt, normalForm } from "./normal-form.js";
import type { Recalculation } from "./recalculate.js";
import {
  agree,
  formulaIn,
  grouped,
  heldBy,
  placeOf,
  type Subject,
  saidIn,
  short,
} from "./subject.js";

/** The formula cells that no longer hold the template's formula, and what is to be said of them. */
export interface FormulaCheck {
  readonly findings: readonly Finding[];
  /** The same, cell by cell. */
  readonly each: readonly Finding[];
  /** The cells with another formula or none, by index. */
  readonly changed: ReadonlySet<number>;
  /** Formulas that only lost what they read on sheets that are gone, and of which nothing else is said. */
  readonly bereft: number;
}

/** Holds each formula of the workbook against the template's, by their normal forms. */
export function checkFormulas(subject: Subject): FormulaCheck {
  const { content, model, match } = subject;
  const gone = goneSheets(subject);
  let bereft = 0;
  const findings: Finding[] = [];
  const changed = new Set<number>();
  const nameAt = namesByArea(content, model);
  const expected = expectedFormulas(model, match);
  const stray = new Set(match.stray.map(({ name }) => name));
  for (const cell of model.cells) {
    const place = match.at.get(cell.id);
    if (place === undefined) continue;
    const found =
      cell.native === undefined
        ? givenFinding(cell, place)
        : formulaFinding(model, cell, place, expected(cell), nameAt);
    if (found === undefined) continue;
    if (cell.native !== undefined) changed.add(cell.index);
    const left = cell.native && withoutSheets(gone, expected(cell));
    if (left !== undefined && isSpelledAlike(place.cell.formula ?? "", left)) {
      bereft += 1;
      continue;
    }
    // where the name stands elsewhere, that is the finding
    if (!stray.has(cell.name)) findings.push(found);
  }
  return { findings: byColumn(findings), each: findings, changed, bereft };
}

/** Where it matters, what a changed formula comes to and what it should, before the formulas themselves. */
export function withFigures(
  { model }: Subject,
  each: readonly Finding[],
  { shown, byTemplate }: Pick<Recalculation, "shown" | "byTemplate">,
): Finding[] {
  const told = each.map((one): Finding => {
    const cell = model.byId.get(one.name ?? "");
    if (cell?.native === undefined) return one;
    const [is, due] = [shown[cell.index] ?? null, byTemplate[cell.index] ?? null];
    if (agree(is, due)) return one;
    const expected = `${saidIn(model, cell, due, is)}, by ${one.expected}`;
    if (one.code !== "formula-edited") return { ...one, expected };
    return { ...one, found: `${saidIn(model, cell, is, due)}, by ${one.found}`, expected };
  });
  return byColumn(told);
}

/** Rows of a column with the same trouble, from the fourth on, are told as one. */
function byColumn(findings: readonly Finding[]): Finding[] {
  const columns = new Map<string, Finding[]>();
  for (const one of findings) {
    const key = `${one.code} ${one.name?.replace(/\[\d+\]$/, "")}`;
    columns.set(key, [...(columns.get(key) ?? []), one]);
  }
  return [...columns.values()].flatMap((rows) => grouped(rows, 3));
}

function formulaFinding(
  model: Model,
  cell: Cell,
  place: MatchedCell,
  expected: string,
  nameAt: NameAt,
): Finding | undefined {
  const { formula, value } = place.cell;
  const common = { grade: "wrong", where: placeOf(place), name: cell.id } as const;
  const expectedShort = `=${short(expected, 400)}`;
  const advice = `Put the formula back, ${orWriteAgain}`;
  if (formula === undefined) {
    if (value === null) {
      const code = "formula-missing";
      return { ...common, code, found: "an empty cell", expected: expectedShort, advice };
    }
    const found = `the fixed value ${saidIn(model, cell, heldBy(cell, value))} in place of a formula`;
    return { ...common, code: "formula-overwritten", found, expected: expectedShort, advice };
  }
  if (isSpelledAlike(formula, expected)) return undefined;
  const wanted = normalForm(expected, place.sheet, nameAt);
  if (wanted !== undefined && normalForm(formula, place.sheet, nameAt) === wanted) return undefined;
  const found = `=${short(formula, 400)}`;
  return { ...common, code: "formula-edited", found, expected: expectedShort, advice };
}

function givenFinding(cell: Cell, place: MatchedCell): Finding | undefined {
  const formula = formulaIn(cell, place.cell);
  if (formula === undefined) return undefined;
  const isInput = cell.declaration.kind === "input";
  return {
    grade: isInput ? "doubtful" : "wrong",
    code: "input-formula",
    where: placeOf(place),
    name: cell.id,
    found: `=${short(formula, 400)}`,
    expected: isInput ? "a value that somebody gives" : "a fixed value",
    advice: isInput
      ? "Type the value itself, so that its origin can be told; or keep it, and say why in the trail."
      : `Put the template's value back, ${orWriteAgain}`,
  };
}

/** The template's formulas; where no cell has moved, as every workbook is written with them. */
export function expectedFormulas(model: Model, match: WorkbookMatch): (cell: Cell) => string {
  const still =
    match.moved.length === 0 && [...match.sheets].every(([name, called]) => name === called);
  return still ? (cell) => xlsxFormula(model, cell) : (cell) => expectedFormula(model, match, cell);
}

/** The template's formula with the addresses that its cells have in this workbook. */
export function expectedFormula(model: Model, match: WorkbookMatch, cell: Cell): string {
  if (cell.native === undefined) return "";
  const home = match.at.get(cell.id)?.sheet ?? cell.sheet;
  const at = (target: Cell) =>
    match.at.get(target.id) ?? {
      sheet: match.sheets.get(target.sheet) ?? target.sheet,
      address: templateAddress(target.column, target.line),
    };
  const prefix = (sheet: string) => (sheet === home ? "" : `'${sheet.replaceAll("'", "''")}'!`);
  const reference = (to: Reference): string => {
    if (to.kind === "area") {
      const places = areaCells(model, to).map((one) => {
        const { column, row } = positionOf(at(one).address) as Position;
        return { column, line: row };
      });
      return `${prefix(match.sheets.get(to.sheet) ?? to.sheet)}${corners(places)}`;
    }
    const target = cellOf(model, to, cell.row ?? 0);
    if (to.kind !== "own" && !target.implied) return target.name;
    const { sheet, address } = at(target);
    if (to.kind !== "column") return `${prefix(sheet)}${address}`;
    const last = at(columnOf(model, to.table, to.column).cells.at(-1) as Cell);
    return `${prefix(sheet)}${fixed(address)}:${fixed(last.address)}`;
  };
  const readable = pickedFromOneRow(model, cell.native);
  return print(readable, { prefixed: true, exponent: "E", quotes: "doubled", reference });
}

const fixed = (address: string): string => address.replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");

/** The template's names by the area they stand for in the workbook. */
export function namesByArea(content: WorkbookContent, model: Model): NameAt {
  // most workbooks spell their formulas as they were written, and nobody asks
  let areas: Map<string, string> | undefined;
  return (area) => {
    areas ??= areasOfNames(content, model);
    return areas.get(area);
  };
}

function areasOfNames(content: WorkbookContent, model: Model): Map<string, string> {
  const own = new Set(model.cells.map(({ name }) => name));
  const areas = new Map<string, string>();
  for (const { name, target, scope } of content.names) {
    const known = name.toLowerCase();
    if (scope !== undefined || target === undefined || !own.has(known)) continue;
    const [from, to] = [addressOf(target.from), addressOf(target.to)];
    areas.set(`${target.sheet.toLowerCase()}!${from === to ? from : `${from}:${to}`}`, known);
  }
  return areas;
}
