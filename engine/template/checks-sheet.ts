import { count, number, text, type UnitSystem } from "../units/quantity.js";
import { areaTable, wordsOf } from "./area.js";
import {
  bidStandsLines,
  bidStandsNames,
  bidStandsWords,
  errorLists,
  hasCells,
} from "./bid-stands.js";
import {
  type Block,
  type CheckDeclaration,
  calc,
  check,
  isOffice,
  lines,
  published,
  type SheetDeclaration,
  sheet,
  type TableBlock,
  table,
  unprinted,
} from "./declare.js";
import { firstFaults, firstFaultsTable } from "./first-faults.js";
import { toldWhereTyped } from "./implied.js";
import { messageName, overridden, statusKey, statusName } from "./implied-names.js";
import { hasStatus } from "./input-status.js";
import { formulaInRow } from "./row-sentence.js";
import { sentenceFormula, textLiteral } from "./sentence.js";
import { figuresFor } from "./spots.js";
import { inputsOn, messagesAtHome, tableShown, whereOf } from "./spread.js";

interface CheckOnSheet {
  readonly name: string;
  readonly label: string;
  readonly where: string;
  readonly level: CheckDeclaration["level"];
  readonly state: string;
  readonly message: string;
  /** Where it is mended, as a link names it: an input, else the check, else its sheet. */
  readonly goes: string;
}

/** The names that every template has on its sheet Checks. */
export const ownNames: readonly string[] = [
  ...["checks_failed", "warnings", "checks_held", "check_list", "check_shown", firstFaults],
  ...bidStandsNames,
];

/**
 * The sheet that says whether the bid stands and lists all checks, worst first. It is made from
 * the checks that the other sheets declare, and adds one for each sheet's inputs.
 */
export function checksSheet(
  sheets: readonly SheetDeclaration[],
  system: UnitSystem,
  toSend?: string,
): {
  sheet: SheetDeclaration;
  checks: string[];
} {
  const faults = firstFaultsTable(sheets);
  const inputChecks = inputsRight(sheets, faults?.first ?? new Map());
  const inputBlock = lines("Inputs by sheet", inputChecks);
  const inputs = inputNames(sheets);
  const frame = { sheets, system, inputs };
  const found = [
    ...sheets.flatMap((one) => one.blocks.flatMap((block) => checksOf(block, one.name, frame))),
    ...sheetsAtFault(checksOf(inputBlock, "Checks", frame), sheets),
  ].map(inSight(sheets));
  const blocks: Block[] = [
    lines("Bid status", {
      ...bidStandsLines(sheets, toSend),
      checks_failed: calc(count, notHolding("must"), "Checks failed", { strong: true }),
      warnings: calc(count, notHolding("look"), "Warnings", { strong: true }),
      checks_held: calc(
        count,
        `COUNTIF(${checkList}.rank,">=${ranks.holds}")`,
        "Other checks, all hold",
      ),
    }),
    sortedList(found.length),
    inputBlock,
    ...(faults === undefined ? [] : [faults.block]),
    workingList(found),
    // what tells of errors stands above and below what is looked at for them
    ...errorLists(sheets),
    unprinted(lines("Bid status in words", bidStandsWords(sheets))),
  ];
  const purpose =
    "What does not hold, worst first, each with what to do; then every check of the bid.";
  const made: SheetDeclaration = { ...sheet("Checks", purpose, blocks), asksForErrors: true };
  return { sheet: made, checks: found.map(({ name }) => name) };
}

/** All but those that hold: an error in one of them neither hides it nor spreads to the number. */
const notHolding = (level: CheckDeclaration["level"]): string =>
  `COUNTIF(check_list.level,"${level}")-COUNTIFS(check_list.level,"${level}",check_list.rank,">=${ranks.holds}")`;

/** The names of single inputs, of columns of inputs, and of tables by their first one. */
function inputNames(sheets: readonly SheetDeclaration[]): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const block of sheets.flatMap(({ blocks }) => blocks)) {
    const table = tableShown(block);
    const cells = Object.entries(
      table?.columns ?? (block.kind === "lines" ? block.cells : {}),
    ).filter(([, { kind }]) => kind === "input");
    for (const [key] of cells) {
      if (table === undefined) names.set(key, key);
      else {
        const column = `${table.name}.${key}`;
        names.set(column, column);
        if (!names.has(table.name)) names.set(table.name, column);
      }
    }
  }
  return names;
}

/** The first input that a sentence names, which is where a person goes to mend what it says. */
function namedIn(
  sentence: string,
  table: TableBlock | undefined,
  inputs: ReadonlyMap<string, string>,
) {
  const bare = sentence.replace(/\{[^}]*\}/g, " ");
  const said = bare.match(/[a-z][a-z0-9]*(?:[_.][a-z0-9]+)*/g) ?? [];
  // a word alone may be one of the language, but where its sheet is told
  const sure = (word: string) => /[_.]/.test(word) || bare.includes(` ${word} on sheet `);
  const inTurn = said.filter(sure).flatMap((word) => {
    const own = table === undefined ? undefined : inputs.get(`${table.name}.${word}`);
    return own ?? inputs.get(word) ?? [];
  });
  return inTurn[0];
}

/** A link into a hidden sheet leads nowhere: in its place one to the list that says what to do, and on which sheet. */
function inSight(sheets: readonly SheetDeclaration[]): (one: CheckOnSheet) => CheckOnSheet {
  const unseen = new Set(
    sheets
      .filter(({ hidden }) => hidden === true)
      .flatMap(({ name, blocks }) => [
        `'${name}'!A1`,
        ...blocks.flatMap((one) => namesOn(one, name)),
      ]),
  );
  return (one) => (unseen.has(one.goes) ? { ...one, goes: "'Checks'!A1" } : one);
}

/** The names of the cells and columns that a block has on a sheet. */
function namesOn(block: Block, sheet: string): string[] {
  if (block.kind === "lines") return Object.keys(block.cells);
  const table = tableShown(block);
  if (table === undefined) return [];
  const keys =
    block.kind === "part"
      ? inputsOn(table, sheet).map(([key]) => key)
      : Object.keys(table.columns).filter((key) => whereOf(table, key) === undefined);
  return keys.map((key) => `${table.name}.${key}`);
}

/** The checks on the inputs of a sheet lead to that sheet. */
const sheetsAtFault = (
  checks: readonly CheckOnSheet[],
  sheets: readonly SheetDeclaration[],
): CheckOnSheet[] =>
  checks.map((one) => {
    const sheet = sheets.find(({ name }) =>
      [inputsRightName(name), figuresRightName(name)].includes(one.name),
    );
    return sheet === undefined ? one : { ...one, goes: `'${sheet.name}'!A1` };
  });

interface Frame {
  readonly sheets: readonly SheetDeclaration[];
  readonly system: UnitSystem;
  readonly inputs: ReadonlyMap<string, string>;
}

function checksOf(block: Block, where: string, frame: Frame): CheckOnSheet[] {
  const { inputs } = frame;
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
              goes: namedIn(cell.sentence, undefined, inputs) ?? name,
            },
          ]
        : [],
    );
  }
  if (block.kind !== "table") return [];
  return Object.entries(block.columns).flatMap(([key, cell]) => {
    if (cell.kind !== "check") return [];
    const column = `${block.name}.${key}`;
    const message = firstMessage(block, key, cell, frame);
    const label = [block.heading, cell.label].filter(Boolean).join(": ") || column;
    const [first = key] = Object.keys(block.columns);
    const goes = namedIn(cell.sentence, block, inputs) ?? `${block.name}.${first}`;
    return [
      { name: column, label, where, level: cell.level, state: `AND(${column})`, message, goes },
    ];
  });
}

/** The sentence of a table's check for the first row in which it fails: from its message there, where it has one. */
function firstMessage(
  block: TableBlock,
  key: string,
  { sentence }: CheckDeclaration,
  { sheets, system }: Frame,
): string {
  const row = `MATCH(FALSE,${block.name}.${key},0)`;
  const [only, ...others] = messagesAtHome(block);
  if (only === messageName(key) && others.length === 0)
    return `INDEX(${block.name}.${messageName(key)},${row})`;
  const said = sentenceFormula(sentence, { system, reader: "office" }, figuresFor(sheets, block));
  const beside = sheets
    .flatMap(({ blocks }) => blocks)
    .find((one): one is TableBlock => one.kind === "table" && one.name === block.beside);
  return formulaInRow(said, row, beside === undefined ? [block] : [block, beside]);
}

/** The name of the check on a sheet's inputs: `inputs_right_runs`. */
export function inputsRightName(sheet: string): string {
  return `inputs_right_${wordsOf(sheet)}`;
}

/** The name of the check on the figures of a sheet that is made after the work: `figures_right_built`. */
export function figuresRightName(sheet: string): string {
  return `figures_right_${wordsOf(sheet)}`;
}

/**
 * For each sheet with inputs, a check that every one of them keeps to its rule. What is typed after the work keeps no bid
 * from standing: there it is worth a look, and so is a cell in error, which the lists of errors leave out.
 */
function inputsRight(
  sheets: readonly SheetDeclaration[],
  first: ReadonlyMap<string, string>,
): Record<string, CheckDeclaration> {
  const made: Record<string, CheckDeclaration> = {};
  for (const one of sheets) {
    const conditions = one.blocks.flatMap((block) => emptyStatuses(block, one.name));
    const level = one.afterwards ? "look" : "must";
    if (one.afterwards && hasCells(one)) {
      made[figuresRightName(one.name)] = check(
        `NOT(ISERROR(SUM(${areaTable}.${wordsOf(one.name)})))`,
        `Sheet ${one.name}: a cell holds an error. Correct what was typed after the work; the bid itself is not touched.`,
        { label: `Error on ${one.name}`, level },
      );
    }
    if (conditions.length === 0) continue;
    made[inputsRightName(one.name)] = check(
      `AND(${conditions.join(",")})`,
      `Sheet ${one.name}: ${faultSaid(first.get(one.name))}. Correct the one with an arrow beside it.`,
      { label: `Input faulty on ${one.name}`, level },
    );
  }
  return made;
}

/** The first input at fault by its table and row, or its name; in plain words where that is not known. */
function faultSaid(first: string | undefined): string {
  const plain = "an input is missing or breaks its rule";
  return first === undefined ? plain : `{IF(LEN(${first})>0,${first},${textLiteral(plain)})}`;
}

function emptyStatuses(block: Block, sheet: string): string[] {
  const table = tableShown(block);
  if (table !== undefined) {
    const where = block.kind === "part" ? sheet : undefined;
    const status = `${table.name}.${statusKey(where)}`;
    const inputs = inputsOn(table, where);
    // what a check of the table tells there fails as that check, and not twice
    const told = toldWhereTyped(table, inputs).map(
      ([, says]) => `(${status}<>${textLiteral(says)})`,
    );
    const override = inputs.some(([, one]) => isOffice(one))
      ? [`(${status}<>${textLiteral(overridden)})`]
      : [];
    const others = [...told, ...override];
    const faulty = [`(${status}<>"")`, ...(others.length === 0 ? ["1"] : others)].join("*");
    return inputs.length > 0 ? [`SUMPRODUCT(${faulty})=0`] : [];
  }
  if (block.kind !== "lines") return [];
  return Object.entries(block.cells)
    .filter(([, cell]) => hasStatus(cell))
    .map(([name, cell]) =>
      isOffice(cell) ? `LEFT(${statusName(name)},1)<>"←"` : `${statusName(name)}=""`,
    );
}

/** The table of all checks, sheet by sheet. */
export const checkList = "check_list";

/** The table of the worst checks, worst first. */
export const checkShown = "check_shown";

/** How many checks the list of the worst ones shows: a page. */
const mostShown = 40;

function sortedList(all: number): Block {
  const rows = Math.min(all, mostShown);
  const heading = `Errors and warnings, worst first${all > rows ? ` (at most ${rows})` : ""}`;
  return table(
    checkShown,
    heading,
    { rows },
    {
      check: calc(text, inTurn("check"), "Check"),
      state: calc(text, stateInTurn, "State"),
      sheet: calc(text, inTurn("sheet"), "Sheet"),
      message: calc(text, inTurn("message"), "What to do"),
    },
  );
}

/** Ranks lie a thousand apart by what a check does; what is over is its place in the list. */
export const ranks = { must: 0, look: 1000, holds: 2000 } as const;

/** Whether the rank of a check says that it holds. */
export const holds = (rank: unknown): boolean => typeof rank === "number" && rank >= ranks.holds;

const ranked = (row: number) => `SMALL(check_list.rank,${row})`;
/** A check that holds is not told: what is read here is to be done. */
const inTurn = (key: string) => (row: number) =>
  `IF(state="","",INDEX(check_list.${key},MOD(${ranked(row)},${ranks.look})))`;
const stateInTurn = (row: number) =>
  `IF(${ranked(row)}>=${ranks.holds},"",IF(${ranked(row)}<${ranks.look},"stop","warning"))`;

const unknown = textLiteral("This cannot be told: a figure that it needs is in error.");

const messageFormula = ({ message }: CheckOnSheet): string =>
  `IF(rank>=${ranks.holds},"ok",IF(ISERROR(${message}),${unknown},${message}))`;

/** A check in error has not held. */
const rankFormula = ({ state, level }: CheckOnSheet): string =>
  `place+IF(ISERROR(${state}),${ranks[level]},IF(${state},${ranks.holds},${ranks[level]}))`;

function workingList(found: readonly CheckOnSheet[]): Block {
  const source = "the checks that the sheets of this template declare";
  return table(
    checkList,
    "All checks by sheet",
    {
      rows: found.length,
      printed: false,
      data: found.map(({ label, where, level, goes }, i) => ({
        ...{ check: label, sheet: where, level, goes, place: i + 1 },
      })),
    },
    {
      check: published(text, "Check", { source }),
      sheet: published(text, "Sheet", { source }),
      level: published(text, "Level", { source }),
      goes: published(text, "Mended at", { source }),
      place: published(count, "Place", { source }),
      rank: calc(number, (row) => rankFormula(found[row - 1] as CheckOnSheet), "Rank", {
        decimals: 0,
        note: `Place, and ${ranks.look} more for a warning, ${ranks.holds} for a check that holds.`,
      }),
      message: calc(text, (row) => messageFormula(found[row - 1] as CheckOnSheet), "What to do"),
    },
  );
}
