import { trailSheet } from "../workbook/match/trail-columns.js";
import type { SheetContent, WorkbookContent } from "../workbook/read/content.js";
import type { Finding } from "./finding.js";
import { namesByArea } from "./formulas.js";
import { type NameAt, normalForm } from "./normal-form.js";
import { agree, grouped, heldValue, type Subject, said, short } from "./subject.js";

/** A differing text or two are told one by one; many are one finding. */
const mostTexts = 10;

/**
 * Holds what stands around the template's cells against a workbook freshly written from the same
 * inputs: sheets, names, hidden things, labels and units, the figures on sheets Summary and Names.
 */
export function checkSurroundings(subject: Subject, fresh: WorkbookContent): Finding[] {
  const { content, match } = subject;
  const here = new Map(content.sheets.map((sheet) => [sheet.name.toLowerCase(), sheet]));
  const findings: Finding[] = [];
  const expected = new Set<string>();
  const nameAt = namesByArea(content, subject.model);
  const ours = new Set([...match.at.values()].map(({ sheet, address }) => `${sheet}!${address}`));
  for (const sheet of fresh.sheets) {
    const name = match.sheets.get(sheet.name) ?? sheet.name;
    expected.add(name.toLowerCase());
    const found = here.get(name.toLowerCase());
    if (found === undefined) {
      findings.push(sheetFinding("sheet-missing", sheet.name));
      continue;
    }
    findings.push(...hidden(found, sheet));
    if (sheet.name !== trailSheet && !shifted(subject, sheet.name)) {
      findings.push(...differences(found, sheet, ours, nameAt), ...rules(found, sheet));
    }
  }
  for (const { name } of content.sheets) {
    if (!expected.has(name.toLowerCase())) findings.push(sheetFinding("sheet-extra", name));
  }
  return [...findings, ...extraNames(content, fresh)];
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

/** Lines or columns of the sheet were put in or taken out, so that addresses do not compare. */
function shifted({ model, match }: Subject, sheet: string): boolean {
  if (match.inserted.some((row) => row.sheet === (match.sheets.get(sheet) ?? sheet))) return true;
  const moved = new Set(match.moved.map(({ id }) => id));
  const gone = new Set(match.missing.map(({ id }) => id));
  return model.cells.some(
    ({ sheet: home, id }) => home === sheet && (moved.has(id) || gone.has(id)),
  );
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
function rules(found: SheetContent, fresh: SheetContent): Finding[] {
  const gone = [...fresh.validated].filter((address) => !found.validated.has(address));
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

function differences(
  found: SheetContent,
  fresh: SheetContent,
  ours: ReadonlySet<string>,
  nameAt: NameAt,
): Finding[] {
  const texts: Finding[] = [];
  const figures: Finding[] = [];
  for (const address of new Set([...fresh.cells.keys(), ...found.cells.keys()])) {
    const where = `${found.name}!${address}`;
    if (ours.has(where)) continue;
    const [now, then] = [found.cells.get(address), fresh.cells.get(address)];
    const [formula, expected] = [now?.formula, then?.formula];
    if (expected !== undefined) {
      const same =
        formula === expected ||
        (formula !== undefined &&
          normalForm(formula, found.name, nameAt) === normalForm(expected, found.name, nameAt));
      if (same) continue;
      figures.push({
        grade: "wrong",
        code: formula === undefined ? "formula-overwritten" : "formula-edited",
        where,
        found:
          formula === undefined
            ? `the fixed value ${said(heldValue(now?.value ?? null))} in place of a formula`
            : `=${short(formula)}`,
        expected: `=${short(expected)}`,
        advice: "Put the formula back: this figure no longer follows the bid.",
      });
    } else if (formula !== undefined || !agree(valueIn(now), valueIn(then))) {
      texts.push({
        grade: then === undefined ? "to know" : "doubtful",
        code: "text-changed",
        where,
        found: formula === undefined ? said(valueIn(now)) : `=${short(formula)}`,
        expected: said(valueIn(then)),
        advice:
          then === undefined
            ? "Nothing, if it is a remark; no formula of the template reads it."
            : "See whether the words still say what the figure beside them is.",
      });
    }
  }
  const added = texts.filter(({ grade }) => grade === "to know");
  const changed = texts.filter(({ grade }) => grade === "doubtful");
  return [...figures, ...grouped(changed, mostTexts), ...grouped(added, mostTexts)];
}

const valueIn = (cell: { value: Parameters<typeof heldValue>[0] } | undefined) =>
  heldValue(cell?.value ?? null);

function extraNames(content: WorkbookContent, fresh: WorkbookContent): Finding[] {
  const known = new Set(fresh.names.map(({ name }) => name.toLowerCase()));
  return content.names.flatMap(({ name, text, scope, hidden: unseen }): Finding[] => {
    // print areas and filters, which every program keeps as names
    if (name.startsWith("_xlnm") || known.has(name.toLowerCase())) return [];
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
}
