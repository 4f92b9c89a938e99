import type { Value } from "../formula/value.js";
import { trailSheet, writtenSheet } from "../workbook/match/trail-columns.js";
import { type Position, positionOf } from "../workbook/read/address.js";
import type { CellContent, WorkbookContent } from "../workbook/read/content.js";
import { hiddenRowsAlarm } from "../workbook/write/hidden-rows.js";
import { orWriteAgain, writeAgain } from "./cures.js";
import type { Finding } from "./finding.js";
import { namesByArea } from "./formulas.js";
import { goneSheets } from "./gone-sheets.js";
import { checkHidden, hidesRows } from "./hidden-lines.js";
import { shownBy } from "./look/format/shown.js";
import { isSpelledAlike, type NameAt, normalForm } from "./normal-form.js";
import { printAreas, within } from "./printed-part.js";
import { reachingOut } from "./reaching-out.js";
import type { SheetPair } from "./sheet-pairs.js";
import { recalculate } from "./stale.js";
import { agree, grouped, heldValue, type Subject, said, short } from "./subject.js";

/** A differing text or two are told one by one; many are one finding. */
const mostTexts = 10;

/**
 * Holds what stands around the template's cells against a workbook freshly written from the same
 * inputs: sheets, names, hidden things, labels and units, the figures on sheets Summary and Names. Lines that
 * were put in or taken out are followed.
 *
 * @param once the workbook as it was when it was written, where it is needed and known
 */
export function checkSurroundings(
  subject: Subject,
  fresh: WorkbookContent,
  pairs: readonly SheetPair[],
  once?: WorkbookContent,
): Finding[] {
  const { content, model } = subject;
  const findings: Finding[] = [];
  const known = new Set(pairs.map(({ found }) => found.name));
  const paired = new Set(pairs.map((pair) => pair.fresh.name));
  // those that hold cells of the template are told with them
  const told = new Set(goneSheets(subject).map(({ name }) => name));
  for (const { name } of fresh.sheets) {
    if (told.has(name)) continue;
    if (!paired.has(name)) findings.push(sheetFinding("sheet-missing", name));
  }
  const nameAt = namesByArea(content, model);
  const ours = placesBySheet(subject);
  const formatOf = ({ style }: CellContent) =>
    fresh.look?.styles.cells[style ?? 0]?.format ?? "General";
  const handouts = new Set(model.sheets.filter(({ handout }) => handout).map(({ name }) => name));
  for (const pair of pairs) {
    const before = once?.sheets.find(({ name }) => name === pair.fresh.name)?.look;
    const handout = handouts.has(pair.fresh.name);
    findings.push(...checkHidden(pair, content.look, { before, handout }));
    if (pair.fresh.name === trailSheet || pair.fresh.name === writtenSheet) continue;
    const areas = printAreas(content, pair.found.name);
    const printed = (at: Position) => handout && within(areas, at);
    const own = ours.get(pair.found.name) ?? new Set();
    findings.push(...differences(pair, { nameAt, ours: own, printed, formatOf }), ...rules(pair));
  }
  const extra = content.sheets.flatMap(({ name }) =>
    known.has(name) ? [] : [sheetFinding("sheet-extra", name)],
  );
  findings.push(...grouped(extra, 3, "sheets"));
  return [...findings, ...extraNames(content, fresh)];
}

/** Where the template's own cells stand, by sheet. */
function placesBySheet({ match }: Subject): Map<string, Set<string>> {
  const sheets = new Map<string, Set<string>>();
  for (const { sheet, address } of match.at.values()) {
    const own = sheets.get(sheet);
    if (own === undefined) sheets.set(sheet, new Set([address]));
    else own.add(address);
  }
  return sheets;
}

function sheetFinding(code: "sheet-missing" | "sheet-extra", name: string): Finding {
  const extra = code === "sheet-extra";
  return {
    grade: "doubtful",
    code,
    where: `sheet ${name}`,
    found: extra ? "a sheet that the template does not have" : "the sheet is gone",
    expected: extra ? "the template's sheets" : `the sheet ${name}`,
    advice: extra
      ? "See whether the bid rests on it; what belongs to the job goes into the inputs."
      : writeAgain,
  };
}

/** Inputs that the spreadsheet no longer checks as they are typed; the bid's own messages still do. */
function rules({ found, fresh, map }: SheetPair): Finding[] {
  const gone = [...fresh.validated].filter((address) => {
    const to = map.addressOf(address);
    return to !== undefined && !found.validated.has(to);
  });
  if (gone.length === 0) return [];
  return [
    {
      grade: "to know",
      code: "rule-missing",
      where: `${found.name}!${gone.slice(0, 8).join(", ")}${gone.length > 8 ? ", …" : ""}`,
      found: `${gone.length} inputs without their rule for what may be typed`,
      expected: "a rule on each input",
      advice: "Nothing: the message beside the input still tells a value that breaks its rule.",
    },
  ];
}

interface Surroundings {
  readonly nameAt: NameAt;
  /** Where the template's own cells stand on this sheet. */
  readonly ours: ReadonlySet<string>;
  /** Whether a place prints on a page that is handed out. */
  readonly printed: (at: Position) => boolean;
  /** The number format of a cell of the fresh sheet. */
  readonly formatOf: (cell: CellContent) => string;
}

function differences(
  pair: SheetPair,
  { nameAt, ours, printed, formatOf }: Surroundings,
): Finding[] {
  const { found, fresh, map, own } = pair;
  const compared = new Set<string>();
  const [figures, stale, texts]: [Finding[], Finding[], Finding[]] = [[], [], []];
  const alarms: Finding[] = [];
  for (const [address, then] of fresh.cells) {
    if (own.has(address)) continue;
    const there = map.addressOf(address);
    if (ours.has(there ?? address)) continue;
    const where = `${found.name}!${there ?? address}`;
    if (there !== undefined) compared.add(there);
    const now = there === undefined ? undefined : found.cells.get(there);
    if (then.formula === undefined) texts.push(...changedText(where, now, then));
    else if (!sameFormula(now?.formula, then.formula, found.name, nameAt)) {
      figures.push(changedFormula(where, now, then.formula));
    } else if (then.formula.includes(hiddenRowsAlarm) && valueIn(now) === hiddenRowsAlarm) {
      // it looks at what is hidden, which no program calculates anew as rows are shown
      if (!hidesRows(pair)) alarms.push(oldAlarm(where));
    } else if (!alike(valueIn(now), valueIn(then))) {
      stale.push(staleValue(where, valueIn(now), valueIn(then), formatOf(then)));
    }
  }
  const added = [...found.cells].flatMap(([address, now]) => {
    if (compared.has(address) || ours.has(address)) return [];
    return addedCell(`${found.name}!${address}`, now, printed(positionOf(address) as Position));
  });
  const notes = added.filter(({ code }) => code === "note");
  return [
    ...figures,
    ...alarms,
    ...stale,
    ...grouped(texts, mostTexts),
    ...added.filter(({ code }) => code !== "note"),
    ...grouped(notes, mostTexts),
  ];
}

/** Some programs store yes and no as 1 and 0. */
const alike = (a: ReturnType<typeof heldValue>, b: ReturnType<typeof heldValue>): boolean =>
  agree(typeof b === "boolean" && typeof a === "number" ? a === 1 : a, b);

function sameFormula(
  now: string | undefined,
  then: string,
  sheet: string,
  nameAt: NameAt,
): boolean {
  if (now === undefined) return false;
  if (isSpelledAlike(now, then)) return true;
  const wanted = normalForm(then, sheet, nameAt);
  return wanted !== undefined && normalForm(now, sheet, nameAt) === wanted;
}

function changedFormula(where: string, now: CellContent | undefined, expected: string): Finding {
  const formula = now?.formula;
  return {
    grade: "wrong",
    code: formula === undefined ? "formula-overwritten" : "formula-edited",
    where,
    found:
      formula === undefined
        ? `the fixed value ${said(valueIn(now))} in place of a formula`
        : `=${short(formula)}`,
    expected: `=${short(expected)}`,
    advice: `This figure no longer follows the bid. Put the formula back, ${orWriteAgain}`,
  };
}

function staleValue(where: string, now: Value, then: Value, format: string): Finding {
  const [is, was] = [saidBy(format, now), saidBy(format, then)];
  const apart = is !== was;
  return {
    grade: "wrong",
    code: "value-stale",
    where,
    found: `the stored result ${apart ? is : said(now)}`,
    expected: `${apart ? was : said(then)}, which follows from the workbook's own inputs`,
    advice: recalculate,
  };
}

const saidBy = (format: string, value: Value): string =>
  typeof value === "number" ? shownBy(format, value) : said(value);

const oldAlarm = (where: string): Finding => ({
  grade: "to know",
  code: "value-stale",
  where,
  found: `"${hiddenRowsAlarm}", and no row in use is hidden`,
  expected: "nothing, once it is recalculated",
  advice: "Nothing: the rows are in sight, and the words go as the sheet is recalculated.",
});

function changedText(where: string, now: CellContent | undefined, then: CellContent): Finding[] {
  const formula = now?.formula;
  if (formula === undefined && agree(valueIn(now), valueIn(then))) return [];
  return [
    {
      grade: "doubtful",
      code: "text-changed",
      where,
      found: formula === undefined ? said(valueIn(now)) : `=${short(formula)}`,
      expected: said(valueIn(then)),
      advice: "See whether the words still say what the figure beside them is.",
    },
  ];
}

/** What somebody wrote where the template has nothing: a note, unless it prints for the customer or reaches out. */
function addedCell(where: string, now: CellContent, printed: boolean): Finding[] {
  const { formula } = now;
  const value = valueIn(now);
  if (formula === undefined && (value === null || (typeof value === "string" && !value.trim()))) {
    return [];
  }
  const found = formula === undefined ? said(value) : `=${short(formula)}`;
  const outside = formula === undefined ? undefined : reachingOut(formula);
  if (outside !== undefined) {
    return [
      {
        grade: "doubtful",
        code: "outside",
        where,
        found: `${found}: ${outside}`,
        expected: "formulas that read this workbook alone",
        advice: "Delete it, unless you know what it fetches: do not let a program follow it.",
      },
    ];
  }
  if (printed) {
    return [
      {
        grade: "doubtful",
        code: "text-changed",
        where,
        found: `${found}, which prints on a page that is handed out`,
        expected: "nothing of the template's",
        advice: "See whether the reader of the page should read it; put it into the inputs if so.",
      },
    ];
  }
  return [
    {
      grade: "to know",
      code: "note",
      where,
      found,
      expected: "nothing of the template's",
      advice: "Nothing, if it is a remark; no formula of the template reads it.",
    },
  ];
}

const valueIn = (cell: CellContent | undefined) => heldValue(cell?.value ?? null);

/** Names that programs keep for themselves and that calculate nothing. */
const kept = /^_xlnm\.(print_area|print_titles|_filterdatabase|sheet_title|criteria|extract)$/i;

/** Gnumeric names the rows that repeat on each page without the mark of a program's own name. */
const ofGnumeric = ({ name, scope, text }: WorkbookContent["names"][number]): boolean =>
  name === "Print_Titles" && scope !== undefined && /^[^!]*!\$\d+:\$\d+$/.test(text);

function extraNames(content: WorkbookContent, fresh: WorkbookContent): Finding[] {
  const known = new Set(fresh.names.map(({ name }) => name.toLowerCase()));
  const extra = content.names.flatMap((one): Finding[] => {
    const { name, text, scope, hidden: unseen } = one;
    if (kept.test(name) || ofGnumeric(one) || known.has(name.toLowerCase())) return [];
    return [
      {
        grade: "doubtful",
        code: "name-extra",
        where: `name ${name}${scope === undefined ? "" : ` of sheet ${scope}`}`,
        found: `${unseen ? "a hidden name" : "a name"} for ${short(text, 80)}`,
        expected: "the template's names",
        advice: "See what it is for; delete it if nothing needs it.",
      },
    ];
  });
  return grouped(extra, 3, "names");
}
