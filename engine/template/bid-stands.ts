import { count, text, yesno } from "../units/quantity.js";
import { areaTable, wordsOf } from "./area.js";
import {
  type Block,
  type CellDeclaration,
  calc,
  published,
  type SheetDeclaration,
  table,
} from "./declare.js";
import { textLiteral } from "./sentence.js";

/** The sheets on which the bid is calculated, and the pages made from it, each with its list of errors. */
const lists = { working: "error_list", pages: "page_error_list" } as const;

/** Names that tell whether the bid stands. */
export const bidStandsNames: readonly string[] = [
  ...["bid_verdict", "bid_stands", "errors_found", "errors_on_pages"],
  ...["errors_said", "pages_said", "failures_said", "warnings_said"],
  ...Object.values(lists),
];

/** What stands apart from the cells that are looked at for errors: it would count itself. */
export const isApart = (name: string): boolean => apart.has(name.split(".")[0] as string);

const apart: ReadonlySet<string> = new Set([
  ...["checks_failed", "warnings", "checks_held"],
  ...bidStandsNames,
]);

const isPage = ({ page }: SheetDeclaration): boolean => page === true;
/** What is typed after the work says nothing of the bid: its errors are told by a check of their own. */
const isOfBid = ({ afterwards }: SheetDeclaration): boolean => afterwards !== true;
export const hasCells = ({ blocks }: SheetDeclaration): boolean =>
  blocks.some(
    (block) =>
      block.kind !== "text" &&
      block.kind !== "chart" &&
      // words and places for pictures alone
      !(block.kind === "panel" && Object.keys(block.cells).length === 0),
  );

/**
 * Whether the bid stands: it does when no cell of it holds an error and no check that must hold
 * fails. `bid_stands` leaves the pages out, so that they can say it themselves.
 * @param toSend the text cell that says what is to be done before a bid that stands is sent
 */
export function bidStandsLines(
  sheets: readonly SheetDeclaration[],
  toSend?: string,
): Readonly<Record<string, CellDeclaration>> {
  const onPages = sheets.filter(hasCells).some(isPage);
  return {
    bid_verdict: calc(text, verdict(toSend), "Bid", { strong: true }),
    bid_stands: calc(yesno, "AND(errors_found=0,checks_failed=0)", "Bid stands", {
      note: "No cell in error on the sheets of the calculation, and no check failed.",
    }),
    errors_found: calc(count, found(lists.working), "Sheets in error", {
      strong: true,
      note: "Sheets of the calculation on which a cell holds an error.",
    }),
    errors_on_pages: calc(count, onPages ? found(lists.pages) : "0", "Pages in error"),
  };
}

/** The parts of which the verdict is put together. */
export function bidStandsWords(
  sheets: readonly SheetDeclaration[],
): Readonly<Record<string, CellDeclaration>> {
  const onPages = sheets.filter(hasCells).some(isPage);
  return {
    errors_said: calc(text, inWords("errors_found", lists.working), "Errors in words"),
    pages_said: calc(
      text,
      onPages ? inWords("errors_on_pages", lists.pages) : '""',
      "Page errors in words",
    ),
    failures_said: calc(
      text,
      'IF(checks_failed=0,"",IF(checks_failed=1,"1 check fails",FIXED(checks_failed,0)&" checks fail"))',
      "Failed checks in words",
    ),
    warnings_said: calc(
      text,
      'IF(warnings=0,"",", "&FIXED(warnings,0)&IF(warnings=1," warning"," warnings"))',
      "Warnings in words",
    ),
  };
}

/** How many sheets of a list are told to hold an error. */
const found = (list: string): string => `SUMPRODUCT((${list}.told<>"")*1)`;

const inWords = (count: string, list: string): string =>
  `IF(${count}=0,"","cells in error on "&TEXTJOIN(", ",TRUE,${list}.told))`;

/** How the text begins that says so; the first sheet sets it in the color of a failed check. */
export const notReady = "NOT READY";

/** What is to be done with a bid that stands, before it is sent, comes behind its warnings. */
function verdict(toSend: string | undefined): string {
  const before =
    toSend === undefined ? "" : `&IF(LEN(${toSend})>0," Before you send: "&${toSend}&".","")`;
  const ready = `"READY: no check fails"&warnings_said&"."${before}`;
  const not = `${textLiteral(`${notReady}: `)}&TEXTJOIN("; ",TRUE,errors_said,pages_said,failures_said)&". See sheet Checks."`;
  return `IF(AND(bid_stands,errors_on_pages=0),${ready},${not})`;
}

/** Working lists: for each sheet, whether a cell of it holds an error. */
export function errorLists(sheets: readonly SheetDeclaration[]): Block[] {
  const namesOf = (some: readonly SheetDeclaration[]) => some.map(({ name }) => name);
  const filled = sheets.filter(hasCells).filter(isOfBid);
  const working = [...namesOf(filled.filter((one) => !isPage(one))), "Checks"];
  const pages = namesOf(filled.filter(isPage));
  return [
    errorList(lists.working, "Errors by sheet", working),
    ...(pages.length === 0 ? [] : [errorList(lists.pages, "Errors by page", pages)]),
  ];
}

function errorList(name: string, heading: string, sheets: readonly string[]): Block {
  const source = "the sheets of this template";
  return table(
    name,
    heading,
    { rows: sheets.length, printed: false, data: sheets.map((sheet) => ({ sheet })) },
    {
      sheet: published(text, "Sheet", { source }),
      // a sum passes over texts, and is in error where one cell is: in every program alike
      told: calc(
        text,
        (row) => `IF(ISERROR(SUM(${areaTable}.${wordsOf(sheets[row - 1] as string)})),sheet,"")`,
        "In error",
      ),
    },
  );
}
