import exceljs, { type Worksheet } from "exceljs";
import { comparisonProperty } from "../output/kind.js";
import { logoPicture } from "../workbook/pictures/logo.js";
import type { Picture, PictureFile } from "../workbook/pictures/picture.js";
import { withPictures } from "../workbook/pictures/place.js";
import { formulaContent } from "../workbook/write/cells.js";
import { styles } from "../workbook/write/look.js";
import { finishPackage } from "../workbook/write/package.js";
import { paperLooks } from "../workbook/write/paper-look.js";
import type { ChangeOrder } from "./change-order.js";
import { type Change, type Comparison, difference } from "./compare.js";
import { reasonText } from "./reasons.js";
import { heldBackSaid } from "./text.js";

type Entry = string | number | null | { readonly formula: string; readonly value: number };

/**
 * A comparison as a workbook: the change order that the customer signs, on a sheet of its own, and
 * the comparison for the office. Differences are formulas. The same comparison gives the same bytes.
 */
export async function comparisonWorkbook(
  comparison: Comparison,
  audience: "customer" | "office",
  order: ChangeOrder,
  logo?: PictureFile,
): Promise<Uint8Array> {
  const book = new exceljs.Workbook();
  book.created = new Date(Date.UTC(2000, 0, 1));
  book.modified = book.created;
  writeOrder(book.addWorksheet(orderName), order);
  if (audience === "office") writeOffice(book.addWorksheet("Comparison"), comparison, order);
  const bytes = finishPackage(new Uint8Array(await book.xlsx.writeBuffer()), {
    [comparisonProperty]: comparison.b.job,
  });
  return withPictures(bytes, logo === undefined ? [] : [logoOnOrder(logo)]);
}

const orderName = "Change order";
const orderWidths = [44, 18, 18, 18];
const letterheadHeight = 28;

/** At the right of the company's name, over the last two columns. */
function logoOnOrder(logo: PictureFile): Picture {
  const columns = orderWidths.slice(2).map((width) => (width * 7 + 5) * 0.75);
  return logoPicture(orderName, { row: 1, column: 3 }, columns, [letterheadHeight], logo);
}

function writeOrder(sheet: Worksheet, order: ChangeOrder): void {
  const {
    job,
    draft,
    title,
    contractor,
    head,
    words,
    page: agreed,
    lines,
    price,
    terms,
    sum,
    rest,
    officeShare,
  } = order;
  const page = new Page(sheet, orderWidths);
  page.letterhead(contractor);
  page.title(`Change order, job ${job}`, title);
  if (draft !== undefined) page.words(draft);
  for (const [label, text] of head) page.pair(label, text === "" ? blank : text);
  page.gap();
  page.heading("What changes");
  for (const word of words.length === 0 ? ["Nothing in the work itself changes."] : words) {
    page.words(word);
  }
  page.gap();
  if (agreed !== undefined) page.heading(`Lines of the ${agreed} that change`);
  for (const { was, now } of lines) {
    if (was !== "") page.words(now === "" ? `No longer: ${was}` : `Was: ${was}`);
    if (now !== "") page.words(was === "" ? `New: ${now}` : `Is: ${now}`);
  }
  page.words(rest);
  page.gap();
  page.heading("Sum, days and draws");
  page.header(["", "As agreed", "With the change", "Difference"]);
  for (const change of [...(price === undefined ? [] : [price]), ...terms]) {
    page.change(change, change.label);
  }
  page.gap();
  page.boxed(sum);
  if (officeShare !== undefined) page.words(officeShare);
  page.gap();
  page.signature("Customer");
  page.signature("Contractor");
}

const blank = "______________________";

function writeOffice(sheet: Worksheet, comparison: Comparison, order: ChangeOrder): void {
  const { a, b, inputs, prices, sections, headline, figures, checks } = comparison;
  const page = new Page(sheet, [44, 18, 18, 18, 60]);
  page.title(`Comparison of ${a.job} and ${b.job}`, "For the office. Not for the customer.");
  const held = heldBackSaid(order);
  if (held !== "") page.words(held);
  const part = (heading: string, head: string[], rows: (() => void)[]) => {
    if (rows.length === 0) return;
    page.heading(heading);
    page.header(head);
    for (const row of rows) row();
    page.gap();
  };
  const changes = (all: readonly Change[]) =>
    all.map((one) => () => page.change(one, `${one.label} (${one.id})`));
  part(
    "Inputs",
    ["Input", "Was", "Is", "", "Why"],
    inputs.map(({ id, label, oldShown, newShown, reason }) => () => {
      page.row([`${label} (${id})`, oldShown, newShown, null, reasonText(reason)]);
    }),
  );
  part(
    "Office book",
    ["Line", "Was", "Is", "", "What"],
    prices.map(({ table, code, label, oldShown, newShown }) => () => {
      page.row([`${table} ${code}`, oldShown, newShown, null, label]);
    }),
  );
  const figureHead = ["", "Was", "Is", "Difference", "Unit"];
  part("Bid summary", figureHead, changes(headline));
  part("Cost by section", figureHead, changes(sections));
  part("Quantities and figures", figureHead, changes(figures));
  part(
    "Checks",
    ["Check", "Now", "", "", "What to do"],
    checks.map(
      ({ id, now, message }) =>
        () =>
          page.row([id, now, null, null, message]),
    ),
  );
}

/** Writes a sheet from the top down. */
class Page {
  private line = 1;

  constructor(
    private readonly sheet: Worksheet,
    private readonly widths: readonly number[],
  ) {
    widths.forEach((width, i) => {
      sheet.getColumn(i + 1).width = width;
    });
    sheet.pageSetup = { orientation: "portrait", fitToPage: true, fitToWidth: 1, fitToHeight: 0 };
    sheet.headerFooter.oddFooter = "&C&8&A&R&8Page &P of &N";
    sheet.views = [{ showGridLines: false }];
  }

  title(title: string, purpose: string): void {
    this.put(1, title, styles.title);
    this.line += 1;
    this.put(1, purpose, styles.purpose);
    this.line += 2;
  }

  /** The company, as its other pages begin; nothing where none is named. */
  letterhead(company: string): void {
    if (company === "") return;
    this.put(1, company, paperLooks.name);
    this.sheet.getRow(this.line).height = 28;
    this.line += 1;
  }

  /** What it comes to, in a box over the width of the page. */
  boxed(text: string): void {
    const look = { ...paperLooks.price, font: { ...paperLooks.price.font, size: 13 } };
    this.widths.forEach((_, i) => {
      this.put(i + 1, i === 0 ? text : null, look);
    });
    // only then: a cell within a merged one writes over the text of the whole
    this.sheet.mergeCells(this.line, 1, this.line, this.widths.length);
    this.sheet.getRow(this.line).height = 32;
    this.line += 1;
  }

  /** A line to sign on, and one for the date. */
  signature(who: string): void {
    const texts = [`${who} ${blank}`, null, `Date ${blank}`];
    this.sheet.getRow(this.line).height = 30;
    texts.forEach((text, i) => {
      this.put(i + 1, text, { ...paperLooks.text, alignment: { vertical: "bottom" } });
    });
    this.line += 1;
  }

  heading(text: string): void {
    this.widths.forEach((_, i) => {
      this.put(i + 1, null, styles.heading);
    });
    this.put(1, text, styles.heading);
    this.line += 1;
  }

  header(texts: readonly string[]): void {
    texts.forEach((text, i) => {
      this.put(i + 1, text || null, styles.header);
    });
    this.line += 1;
  }

  /** A label, and a text over the rest of the width. */
  pair(label: string, text: string): void {
    this.sheet.mergeCells(this.line, 2, this.line, this.widths.length);
    this.put(1, label, styles.label);
    this.put(2, text, styles.prose);
    this.line += 1;
  }

  row(entries: readonly Entry[]): void {
    entries.forEach((entry, i) => {
      this.put(i + 1, entry, i === 0 ? styles.label : styles.note);
    });
    this.line += 1;
  }

  words(text: string): void {
    this.sheet.mergeCells(this.line, 1, this.line, this.widths.length);
    this.put(1, text, styles.prose);
    const width = this.widths.reduce((sum, one) => sum + one, 0);
    this.sheet.getRow(this.line).height = 15 * Math.ceil(text.length / (width * 0.98)) + 1;
    this.line += 1;
  }

  /** Numbers as numbers, their difference as a formula; all else as shown. */
  change(change: Change, label: string): void {
    const more = difference(change);
    if (more === undefined) {
      this.row([label, change.oldShown, change.newShown]);
      return;
    }
    const format = change.unit === "$" ? '"$"#,##0.00' : "#,##0.00##";
    this.put(1, label, styles.label);
    const { old, new: now } = change as Change & { old: number; new: number };
    this.put(2, old, styles.figure, format);
    this.put(3, now, styles.figure, format);
    const formula = `C${this.line}-B${this.line}`;
    this.put(4, { formula, value: more }, styles.strong, `+${format};-${format};0`);
    this.put(5, this.widths.length > 4 ? change.unit : null, styles.unit);
    this.line += 1;
  }

  gap(): void {
    this.line += 1;
  }

  private put(column: number, entry: Entry, style: object, numFmt?: string): void {
    const cell = this.sheet.getCell(this.line, column);
    cell.value =
      typeof entry === "object" && entry !== null
        ? (formulaContent(entry.formula, entry.value) as exceljs.CellValue)
        : entry;
    cell.style = numFmt === undefined ? { ...style } : { ...style, numFmt };
  }
}
