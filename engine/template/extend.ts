import type { NamedFormula } from "../formula/named-formula.js";
import { suggestion } from "../formula/suggest.js";
import type { BookLayout } from "./book-layout.js";
import type {
  Asked,
  Block,
  CellDeclaration,
  FormulaText,
  InputValue,
  SheetDeclaration,
} from "./declare.js";
import type { Roles, Template } from "./template.js";
import { TemplateError } from "./template-error.js";

/** What an office adds to a template, and changes in it. */
export interface Extension {
  /** Its own name and version, which workbooks and job records carry. */
  readonly name: string;
  readonly version: number;
  readonly title?: string;
  /** Cells put at the end of blocks of lines, by the heading of the block. */
  readonly cells?: Readonly<Record<string, Readonly<Record<string, CellDeclaration>>>>;
  /** Blocks put at the end of sheets, by the name of the sheet. */
  readonly blocks?: Readonly<Record<string, readonly Block[]>>;
  /** Sheets put after those that are there. */
  readonly sheets?: readonly SheetDeclaration[];
  /** New formulas of calculated cells and checks, by name (`price`, `runs.posts`), made from the old ones. */
  readonly change?: Readonly<Record<string, (formula: string) => string>>;
  /** New defaults of inputs, by name, in the US unit of each. */
  readonly defaults?: Readonly<Record<string, InputValue>>;
  /** Sections put at the end of the sheets that ask for inputs, by whom they ask. */
  readonly sections?: Readonly<Partial<Record<Asked, readonly string[]>>>;
  readonly formulas?: readonly NamedFormula[];
  /** Tables of the office book that it reads besides. */
  readonly office?: BookLayout;
  /** Figures shown after those that are there. */
  readonly headline?: readonly string[];
  /** Roles that are filled otherwise. */
  readonly roles?: Partial<Roles>;
}

/**
 * A template of an office's own: another one with lines, rules, checks and sheets added, and formulas and defaults
 * changed. The other one stays as it is. What it names must be there: throws TemplateError with all that is not.
 *
 * @example
 * import { calc, extend, input, lines, quantities, sheet, template } from "rillbook";
 *
 * const { money } = quantities;
 * const plain = template({
 *   name: "plain",
 *   version: 1,
 *   title: "Cost and price",
 *   sheets: [
 *     sheet("Price", "From cost to price.", [
 *       lines("Price", {
 *         work: input(money, "Work", { least: 0 }),
 *         price: calc(money, "work*1.25", "Price"),
 *       }),
 *     ]),
 *   ],
 * });
 * const ours = extend(plain, {
 *   name: "ours",
 *   version: 1,
 *   cells: { Price: { permit: input(money, "Permit", { default: 120, least: 0 }) } },
 *   change: { price: (formula) => `${formula}+permit` },
 * });
 */
export function extend(base: Template, own: Extension): Template {
  const extending = new Extending(own);
  const sheets = base.sheets.map((sheet) => extending.sheet(sheet));
  const asks = base.asks?.map((ask) => ({
    ...ask,
    sections: [...ask.sections, ...(own.sections?.[ask.asked] ?? [])],
  }));
  const faults = extending.faults();
  if (faults.length > 0) throw new TemplateError(own.name, faults);
  const { own: _, ...rest } = base;
  return Object.freeze({
    ...rest,
    name: own.name,
    version: own.version,
    title: own.title ?? base.title,
    sheets: [...sheets, ...(own.sheets ?? [])],
    ...(asks === undefined ? {} : { asks }),
    formulas: [...base.formulas, ...(own.formulas ?? [])],
    headline: [...base.headline, ...(own.headline ?? [])],
    ...(base.office === undefined && own.office === undefined
      ? {}
      : { office: [...(base.office ?? []), ...(own.office ?? [])] }),
    ...(base.roles === undefined ? {} : { roles: { ...base.roles, ...own.roles } }),
  });
}

/** What an extension names, what of it was found, and what there was to find. */
class Named {
  private readonly left: Set<string>;
  private readonly seen = new Set<string>();

  constructor(
    private readonly what: string,
    names: Readonly<Record<string, unknown>> | undefined,
  ) {
    this.left = new Set(Object.keys(names ?? {}));
  }

  found(name: string): void {
    this.seen.add(name);
    this.left.delete(name);
  }

  faults(): string[] {
    return [...this.left].map(
      (name) => `There is no ${this.what} "${name}" to extend.${suggestion(name, this.seen)}`,
    );
  }
}

class Extending {
  private readonly onSheet: Named;
  private readonly inBlock: Named;
  private readonly changed: Named;
  private readonly defaulted: Named;

  constructor(private readonly own: Extension) {
    this.onSheet = new Named("sheet", own.blocks);
    this.inBlock = new Named("block of lines headed", own.cells);
    this.changed = new Named("formula of", own.change);
    this.defaulted = new Named("input", own.defaults);
  }

  faults(): string[] {
    return [this.onSheet, this.inBlock, this.changed, this.defaulted].flatMap((one) =>
      one.faults(),
    );
  }

  sheet(sheet: SheetDeclaration): SheetDeclaration {
    const { blocks = {} } = this.own;
    this.onSheet.found(sheet.name);
    const added = Object.hasOwn(blocks, sheet.name) ? (blocks[sheet.name] ?? []) : [];
    return { ...sheet, blocks: [...sheet.blocks.map((one) => this.block(one)), ...added] };
  }

  private block(block: Block): Block {
    if (block.kind === "table") {
      const columns = this.cells(block.columns, (key) => `${block.name}.${key}`);
      return { ...block, columns };
    }
    if (block.kind !== "lines") return block;
    const { cells = {} } = this.own;
    this.inBlock.found(block.heading);
    const added = Object.hasOwn(cells, block.heading) ? cells[block.heading] : {};
    return { ...block, cells: { ...this.cells(block.cells, (name) => name), ...added } };
  }

  private cells(
    cells: Readonly<Record<string, CellDeclaration>>,
    nameOf: (key: string) => string,
  ): Record<string, CellDeclaration> {
    return Object.fromEntries(
      Object.entries(cells).map(([key, cell]) => [key, this.cell(nameOf(key), cell)]),
    );
  }

  private cell(name: string, cell: CellDeclaration): CellDeclaration {
    const { change = {}, defaults = {} } = this.own;
    if (cell.kind === "input") {
      this.defaulted.found(name);
      return Object.hasOwn(defaults, name)
        ? { ...cell, default: defaults[name] as InputValue }
        : cell;
    }
    if (cell.kind !== "calc" && cell.kind !== "check") return cell;
    this.changed.found(name);
    const made = Object.hasOwn(change, name) ? change[name] : undefined;
    return made === undefined ? cell : { ...cell, formula: changedText(cell.formula, made) };
  }
}

const changedText = (formula: FormulaText, made: (formula: string) => string): FormulaText =>
  typeof formula === "string" ? made(formula) : (row) => made(formula(row));
