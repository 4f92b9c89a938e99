import { count, number, text, yesno } from "../units/quantity.js";
import { wordsOf } from "./area.js";
import { bidStandsLines, bidStandsNames, errorLists } from "./bid-stands.js";
import {
  type Block,
  type CellDeclaration,
  type CheckDeclaration,
  calc,
  check,
  lines,
  published,
  type SheetDeclaration,
  sheet,
  table,
} from "./declare.js";
import { messageName, statusKey, statusName } from "./implied-names.js";
import { textLiteral } from "./sentence.js";
import { inputsOn, tableShown } from "./spread.js";

interface CheckOnSheet {
  readonly name: string;
  readonly label: string;
  readonly where: string;
  readonly level: CheckDeclaration["level"];
  readonly state: string;
  readonly message: string;
}

/** The names that every template has on its sheet Checks. */
export const ownNames: readonly string[] = [
  ...["checks_failed", "warnings", "check_list", "check_shown"],
  ...bidStandsNames,
];

/**
 * The sheet that says whether the bid stands and lists all checks, worst first. It is made from
 * the checks that the other sheets declare, and adds one for each sheet's inputs.
 */
export function checksSheet(sheets: readonly SheetDeclaration[]): {
  sheet: SheetDeclaration;
  checks: string[];
} {
  const inputChecks = inputsRight(sheets);
  const inputBlock = lines("Inputs by sheet", inputChecks);
  const found = [
    ...sheets.flatMap((one) => one.blocks.flatMap((block) => checksOf(block, one.name))),
    ...checksOf(inputBlock, "Checks"),
  ];
  const blocks: Block[] = [
    lines("Bid status", {
      ...bidStandsLines(sheets),
      checks_failed: calc(count, notHolding("must"), "Checks failed", { strong: true }),
      warnings: calc(count, notHolding("look"), "Warnings", { strong: true }),
    }),
    sortedList(found.length),
    inputBlock,
    workingList(found),
    ...errorLists(sheets),
  ];
  const purpose = "Every check of the bid, worst first, each with what to do.";
  const made: SheetDeclaration = { ...sheet("Checks", purpose, blocks), asksForErrors: true };
  return { sheet: made, checks: found.map(({ name }) => name) };
}

/** All but those that hold: an error in one of them neither hides it nor spreads to the number. */
const notHolding = (level: CheckDeclaration["level"]): string =>
  `COUNTIF(check_list.level,"${level}")-COUNTIFS(check_list.level,"${level}",check_list.state,"ok")`;

function checksOf(block: Block, where: string): CheckOnSheet[] {
  if (block.kind === "lines") {
    return Object.entries(block.cells).flatMap(([name, cell]) =>
      cell.kind === "check"
        ? [
            {
              name,
              label: cell.label || name,
              where,
              level: cell.level,
              state: name,
              message: messageName(name),
            },
          ]
        : [],
    );
  }
  if (block.kind !== "table") return [];
  return Object.entries(block.columns).flatMap(([key, cell]) => {
    if (cell.kind !== "check") return [];
    const column = `${block.name}.${key}`;
    const messages = `${block.name}.${messageName(key)}`;
    const message = `INDEX(${messages},MATCH(FALSE,${column},0))`;
    const label = [block.heading, cell.label].filter(Boolean).join(": ") || column;
    return [{ name: column, label, where, level: cell.level, state: `AND(${column})`, message }];
  });
}

/** The name of the check on a sheet's inputs: `inputs_right_runs`. */
export function inputsRightName(sheet: string): string {
  return `inputs_right_${wordsOf(sheet)}`;
}

/** For each sheet with inputs, a check that every one of them keeps to its rule. */
function inputsRight(sheets: readonly SheetDeclaration[]): Record<string, CheckDeclaration> {
  const made: Record<string, CheckDeclaration> = {};
  for (const one of sheets) {
    const conditions = one.blocks.flatMap((block) => emptyStatuses(block, one.name));
    if (conditions.length === 0) continue;
    made[inputsRightName(one.name)] = check(
      `AND(${conditions.join(",")})`,
      `Sheet ${one.name}: an input is missing or breaks its rule. Correct the one with an arrow beside it.`,
      { label: `Input faulty on ${one.name}` },
    );
  }
  return made;
}

function emptyStatuses(block: Block, sheet: string): string[] {
  const table = tableShown(block);
  if (table !== undefined) {
    const where = block.kind === "part" ? sheet : undefined;
    const status = `${table.name}.${statusKey(where)}`;
    return inputsOn(table, where).length > 0 ? [`SUMPRODUCT((${status}<>"")*1)=0`] : [];
  }
  if (block.kind !== "lines") return [];
  return Object.entries(block.cells)
    .filter(([, cell]) => hasStatus(cell))
    .map(([name]) => `${statusName(name)}=""`);
}

function hasStatus(cell: CellDeclaration): boolean {
  if (cell.kind !== "input" || cell.quantity.kind === "yesno") return false;
  return !(cell.quantity.kind === "text" && cell.optional && cell.choices === undefined);
}

/** The table of all checks, sheet by sheet. */
export const checkList = "check_list";

/** The table of all checks, worst first. */
export const checkShown = "check_shown";

function sortedList(rows: number): Block {
  return table(
    checkShown,
    "All checks, worst first",
    { rows, beside: "check_list" },
    {
      check: calc(text, at("check"), "Check"),
      state: calc(text, at("state"), "State"),
      sheet: calc(text, at("sheet"), "Sheet"),
      message: calc(text, at("message"), "What to do"),
    },
  );
}

const at = (key: string) =>
  `INDEX(check_list.${key},MATCH(SMALL(check_list.rank,place),check_list.rank,0))`;

const unknown = textLiteral("This cannot be told: a figure that it needs is in error.");

const messageFormula = ({ message }: CheckOnSheet): string =>
  `IF(right,"ok",IF(ISERROR(${message}),${unknown},${message}))`;

const holdsFormula = ({ state }: CheckOnSheet): string => `IF(ISERROR(${state}),FALSE,${state})`;

function workingList(found: readonly CheckOnSheet[]): Block {
  const source = "the checks that the sheets of this template declare";
  return table(
    checkList,
    "All checks by sheet",
    {
      rows: found.length,
      printed: false,
      data: found.map(({ label, where, level }) => ({ check: label, sheet: where, level })),
    },
    {
      check: published(text, "Check", { source }),
      message: calc(text, (row) => messageFormula(found[row - 1] as CheckOnSheet), "What to do"),
      // a check in error has not held
      right: calc(yesno, (row) => holdsFormula(found[row - 1] as CheckOnSheet), "Right"),
      sheet: published(text, "Sheet", { source }),
      level: published(text, "Level", { source }),
      place: calc(count, "above.place+1", "Place", { first: "1" }),
      state: calc(
        text,
        `IF(right,"ok",IF(level="must",${textLiteral("stop")},"warning"))`,
        "State",
      ),
      rank: calc(number, `IF(right,2000,IF(level="must",0,1000))+place`, "Rank", { decimals: 0 }),
    },
  );
}
