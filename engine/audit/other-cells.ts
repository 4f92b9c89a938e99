import { trailSheet, writtenSheet } from "../workbook/match/trail-columns.js";
import { type Position, positionOf } from "../workbook/read/address.js";
import type { CellContent, SheetContent, WorkbookContent } from "../workbook/read/content.js";
import type { Finding } from "./finding.js";
import { namesByArea } from "./formulas.js";
import { isSpelledAlike, type NameAt, normalForm } from "./normal-form.js";
import { printAreas, within } from "./printed-part.js";
import { reachingOut } from "./reaching-out.js";
import type { SheetPair } from "./sheet-pairs.js";
import { agree, grouped, heldValue, type Subject, said, short } from "./subject.js";

/** A differing text or two are told one by one; many are one finding. */
const mostTexts = 10;
/** As for the template's own cells: many stale results are one finding. */
const mostStale = 5;

/**
 * Holds what stands around the template's cells against a workbook freshly written from the same
 * inputs: sheets, names, hidden things, labels and units, the figures on sheets Summary and Names. Lines that
 * were put in or taken out are followed.
 */
export function checkSurroundings(
  subject: Subject,
  fresh: WorkbookContent,
  pairs: readonly SheetPair[],
): Finding[] {
  const { content, model } = subject;
  const findings: Finding[] = [];
  const known = new Set(pairs.map(({ found }) => found.name));
  const paired = new Set(pairs.map((pair) => pair.fresh.name));
  for (const { name } of fresh.sheets) {
    if (!paired.has(name)) findings.push(sheetFinding("sheet-missing", name));
  }
  const nameAt = namesByArea(content, model);
  const ours = placesBySheet(subject);
  const handouts = new Set(model.sheets.filter(({ handout }) => handout).map(({ name }) => name));
  for (const pair of pairs) {
    findings.push(...hidden(pair.found, pair.fresh));
    if (pair.fresh.name === trailSheet || pair.fresh.name === writtenSheet) continue;
    const areas = printAreas(content, pair.found.name);
    const printed = (at: Position) => handouts.has(pair.fresh.name) && within(areas, at);
    const own = ours.get(pair.found.name) ?? new Set();
    findings.push(...differences(pair, { nameAt, ours: own, printed }), ...rules(pair));
  }
  for (const { name } of content.sheets) {
    if (!known.has(name)) findings.push(sheetFinding("sheet-extra", name));
  }
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
      : "Write the bid again from the job record.",
  };
}

function hidden(found: SheetContent, fresh: SheetContent): Finding[] {
  const findings: Finding[] = [];
  const tell = (where: string, what: string) =>
    findings.push({
      grade: "doubtful",
      code: "hidden",
      where,
      found: what,
      expected: "in sight",
      advice: "Show it again, and see what it holds.",
    });
  if (found.state !== "visible" && fresh.state === "visible") {
    tell(`sheet ${found.name}`, "the sheet is hidden");
  }
  const rows = found.hiddenRows - fresh.hiddenRows;
  if (rows > 0) tell(`sheet ${found.name}`, `${rows} hidden rows`);
  const columns = found.hiddenColumns - fresh.hiddenColumns;
  if (columns > 0) tell(`sheet ${found.name}`, `${columns} hidden columns`);
  return findings;
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
}

function differences(
  { found, fresh, map, own }: SheetPair,
  { nameAt, ours, printed }: Surroundings,
): Finding[] {
  const compared = new Set<string>();
  const [figures, stale, texts]: [Finding[], Finding[], Finding[]] = [[], [], []];
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
    } else if (!alike(valueIn(now), valueIn(then))) {
      stale.push(staleValue(where, valueIn(now), valueIn(then)));
    }
  }
  const added = [...found.cells].flatMap(([address, now]) => {
    if (compared.has(address) || ours.has(address)) return [];
    return addedCell(`${found.name}!${address}`, now, printed(positionOf(address) as Position));
  });
  const notes = added.filter(({ code }) => code === "note");
  return [
    ...figures,
    ...grouped(stale, mostStale),
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
    advice: "Put the formula back: this figure no longer follows the bid.",
  };
}

function staleValue(
  where: string,
  now: ReturnType<typeof heldValue>,
  then: ReturnType<typeof heldValue>,
): Finding {
  return {
    grade: "wrong",
    code: "value-stale",
    where,
    found: `the stored result ${said(now)}`,
    expected: `${said(then)}, which follows from the workbook's own inputs`,
    advice: "Open the workbook in a spreadsheet program, recalculate everything and save it.",
  };
}

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
  return grouped(extra, mostTexts);
}
