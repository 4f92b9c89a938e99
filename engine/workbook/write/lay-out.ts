import { columnLetters } from "../../address.js";
import type { Value } from "../../formula/value.js";
import { checkList, holds, ranks } from "../../template/checks-sheet.js";
import type { SheetDeclaration } from "../../template/declare.js";
import { type Cell, columnValues, type Model } from "../../template/model.js";
import { paperColumns } from "../../template/paper.js";
import { type Page, writeLines, writeProse, writeText } from "./blocks.js";
import { Book } from "./book/book.js";
import { formulaContent } from "./cells.js";
import { type ChartPlace, chartPlaces } from "./charts/places.js";
import { documentOf } from "./document.js";
import { footOf } from "./foot.js";
import { frozenLines } from "./freeze.js";
import {
  lastColumn,
  paper,
  paperColumnWidth,
  paperFor,
  paperScale,
  scaleFor,
  sideMargin,
  widened,
} from "./grid.js";
import { writeAlarm } from "./hidden-rows.js";
import type { Identity } from "./identity.js";
import { styles, titleHeight } from "./look.js";
import { writeNames } from "./names-sheet.js";
import { hideUnusedPages, writePanel, writePaperTable } from "./paper.js";
import { setPrint, usualHeight } from "./print-area.js";
import { writeSummary } from "./summary-sheet.js";
import { writeTable } from "./tables.js";
import { linkBack, tabColor } from "./tabs.js";
import { writeAsWritten, writeTrail } from "./trail-sheet.js";
import { wantedWidths } from "./widths.js";

/**
 * Lays a job out as a workbook: every sheet of the model with its formulas and their values, each in one pass from top
 * to bottom, and the sheets that every workbook has. Returns with it where its charts stand.
 */
export function bookOf(
  model: Model,
  values: readonly Value[],
  identity: Identity,
): { readonly book: Book; readonly places: readonly ChartPlace[] } {
  const book = new Book(documentOf(model, values, identity));
  const onSummary = writeSummary(book, model, values, identity);
  const last = lastColumns(model);
  for (const declared of model.sheets) {
    const sheet = book.addSheet(declared.name, {
      hidden: declared.hidden ?? false,
      defaultRowHeight: usualHeight,
      tabColor: tabColor(model.sheets, declared.group),
    });
    const portrait = declared.portrait ?? false;
    const onPaper = !declared.hidden;
    const widest = portrait ? paperColumns : Math.max(lastColumn, last.get(declared.name) ?? 0);
    const widths = portrait
      ? Array.from({ length: paperColumns }, () => paperColumnWidth)
      : widened(wantedWidths(model, values, declared.name, widest));
    const form = declared.formPages !== undefined;
    const page: Page = {
      ...{ model, values, sheet, portrait, widest },
      widths,
      form,
      onPaper,
      alarms: [],
    };
    writeTitle(page, declared.name, declared.purpose);
    writeStatus(page);
    setUpPage(page, identity, declared);
    for (const placed of model.placed) {
      if (placed.sheet !== declared.name) continue;
      const { block } = placed;
      if (block.kind === "lines") writeLines(page, placed, block);
      else if (block.kind === "prose") writeProse(page, placed, block);
      else if (block.kind === "text") writeText(page, placed, block);
      else if (block.kind === "panel") writePanel(page, placed, block);
      else if (block.kind === "table" && block.paper !== undefined)
        writePaperTable(page, placed, block, block.paper);
      else if (block.kind !== "chart") writeTable(page, placed, block);
    }
    hideUnusedPages(page, declared);
    writeAlarm(page);
    setPrint(page, declared);
    const ySplit = frozenLines(page, declared.name);
    sheet.view = { frozenLines: ySplit, showGridLines: false };
    linkBack(sheet, widest + 1);
  }
  const given = writeTrail(book, model, values, identity);
  writeNames(book, model, values);
  writeAsWritten(book, model, values, given);
  defineNames(book, model);
  return { book, places: [...onSummary, ...chartPlaces(model)] };
}

function writeTitle({ sheet }: Page, name: string, purpose: string): void {
  sheet.getCell(1, 1).value = name;
  sheet.getCell(1, 1).style = styles.sheetTitle;
  sheet.getCell(2, 1).value = purpose;
  sheet.getCell(2, 1).style = styles.purpose;
  sheet.getRow(1).height = titleHeight;
}

/** Under the title: how many checks of the sheet do not hold, leading to where all stand. */
function writeStatus({ sheet, model, values, portrait, onPaper }: Page): void {
  const list = model.tables.get(checkList);
  if (portrait || !onPaper || list === undefined) return;
  const of = (key: string) => columnValues(model, values, checkList, key);
  const found = of("rank");
  const own = of("sheet").flatMap((name, i) => (name === sheet.name ? [found[i]] : []));
  if (own.length === 0) return;
  const failing = own.filter((rank) => !holds(rank)).length;
  const on = `${checkList}.sheet,"${sheet.name}"`;
  const count = `COUNTIFS(${on})-COUNTIFS(${on},${checkList}.rank,">=${ranks.holds}")`;
  const words = " to look at on this sheet: see Checks";
  const cell = sheet.getCell(3, 1);
  cell.value = formulaContent(
    `IF(${count}=0,"",HYPERLINK("#'Checks'!A1",(${count})&"${words}"))`,
    failing === 0 ? "" : `${failing}${words}`,
  );
  cell.style = styles.sheetStatus;
}

function setUpPage(
  { sheet, portrait, widest, widths }: Page,
  identity: Identity,
  { namesTrail, handout = false, formPages = 0 }: SheetDeclaration,
): void {
  widths.forEach((width, i) => {
    sheet.widths[i + 1] = width;
  });
  sheet.pageSetup = {
    orientation:
      !portrait && formPages === 0 && paperFor(widest) === paper.lying ? "landscape" : "portrait",
    // programs pass over page breaks where they fit the sheet to the page
    ...(formPages > 0
      ? { fitToPage: true, fitToWidth: 1, fitToHeight: formPages }
      : { fitToPage: false, scale: portrait ? paperScale : scaleFor(widths) }),
    margins: {
      left: sideMargin,
      right: sideMargin,
      top: 0.6,
      bottom: 0.6,
      header: 0.3,
      footer: 0.3,
    },
  };
  sheet.pageSetup.firstPageNumber = 1;
  sheet.footer = footOf(identity, { handout, namesTrail });
}

/** The last column of each sheet in which a cell stands. */
function lastColumns({ cells }: Model): Map<string, number> {
  const last = new Map<string, number>();
  for (const { sheet, column } of cells) last.set(sheet, Math.max(last.get(sheet) ?? 0, column));
  return last;
}

/** A defined name for each single cell and each column; what the compiler implies has none. */
function defineNames({ names }: Book, model: Model): void {
  const define = (name: string, sheet: string, area: string) => names.push({ name, sheet, area });
  for (const cell of model.cells) {
    if (cell.implied || cell.table !== undefined) continue;
    define(cell.name, cell.sheet, `$${columnLetters(cell.column)}$${cell.line}`);
  }
  for (const table of model.tables.values()) {
    for (const { name, cells } of table.columns.values()) {
      const [first, last] = [cells[0] as Cell, cells.at(-1) as Cell];
      if (first.implied) continue;
      const letters = columnLetters(first.column);
      const end = first === last ? "" : `:$${letters}$${last.line}`;
      define(name, first.sheet, `$${letters}$${first.line}${end}`);
    }
  }
}
