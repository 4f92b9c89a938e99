import { check as checkTree, fitTo, type Scope } from "../formula/check.js";
import { FormulaError } from "../formula/formula-error.js";
import { natives } from "../formula/functions/index.js";
import { Inliner } from "../formula/inline.js";
import { parse } from "../formula/parse.js";
import { ofNoCell, swallows } from "../formula/refused.js";
import { frozen, type Tree } from "../formula/tree.js";
import { typeOfQuantity, yesnoType } from "../formula/type.js";
import {
  fromUs,
  type Quantity,
  text as textQuantity,
  type UnitSystem,
  unitOf,
} from "../units/quantity.js";
import { arrange } from "./arrange.js";
import { isApart } from "./bid-stands.js";
import { withBookColumns } from "./book-copies.js";
import { sheetsIn } from "./by-system.js";
import { checksSheet } from "./checks-sheet.js";
import type { CellDeclaration, InputValue, SheetDeclaration, TableBlock } from "./declare.js";
import {
  afterwardsFaults,
  builtFaults,
  formulaFaults,
  logoFaults,
  nameFaults,
  unusedInputFaults,
} from "./faults.js";
import { formulasOf } from "./formulas-of.js";
import { messageName } from "./implied-names.js";
import { withLabels } from "./labelled.js";
import { limitFaults } from "./limits.js";
import { literalKeyFaults } from "./literal-keys.js";
import { literalRowFaults } from "./literal-rows.js";
import type { Cell, Condition, Model } from "./model.js";
import { calculationOrder } from "./order.js";
import { Names } from "./scope.js";
import { sentenceFormula } from "./sentence.js";
import { figuresFor, type Spot, spotsOf, withImpliedColumns } from "./spots.js";
import { structureFaults } from "./structure.js";
import { shownKey, tablesOf } from "./tables.js";
import type { Template } from "./template.js";
import { TemplateError } from "./template-error.js";
import { withWorkings } from "./workings.js";

/**
 * Compiles a template for one system of units: places every cell, resolves and
 * checks every formula, opens named formulas, finds the order of calculation.
 * Throws TemplateError with all faults found.
 */
export function compile(template: Template, system: UnitSystem): Model {
  const asks = sheetsIn(template.asks ?? [], system);
  const { sheets: arranged, faults: askFaults } = arrange(sheetsIn(template.sheets, system), asks);
  const declared = withLabels(arranged);
  const worded = { ...template, sheets: declared };
  const faults = [...nameFaults(worded), ...askFaults, ...structureFaults(worded)];
  if (faults.length > 0) throw new TemplateError(template.name, faults);
  const formulas = formulasOf(template);
  const calculating = withWorkings(withBookColumns(declared));
  const { sheet, checks } = checksSheet(calculating, system, template.roles?.toSend);
  const sheets = withImpliedColumns([...calculating, sheet], system);
  const { placed, spots } = spotsOf(sheets, system);
  const inliner = new Inliner(formulas, system);
  faults.push(...formulaFaults(template.formulas, inliner));
  const names = new Names(spots, system, formulas);
  const compiler = new CellCompiler(names, inliner, system, sheets);
  const cells = spots.map((spot, index) => compiler.cell(spot, index));
  faults.push(...compiler.faults);
  const known = compiler.faults.length;
  for (const { table } of spots) if (table !== undefined) compiler.condition(table);
  faults.push(...compiler.faults.slice(known));
  const tables = tablesOf(cells, sheets, compiler.conditions);
  const byId = new Map(cells.map((cell) => [cell.id, cell]));
  const unordered = { template, system, sheets, placed, cells, byId, tables, formulas, checks };
  if (faults.length > 0) throw new TemplateError(template.name, faults);
  const { order, cycles } = calculationOrder({ ...unordered, order: [] });
  const model: Model = { ...unordered, order };
  faults.push(
    ...cycles,
    ...unusedInputFaults(model),
    ...afterwardsFaults(model),
    ...builtFaults(model),
    ...logoFaults(model),
    ...limitFaults(model),
    ...literalRowFaults(model),
    ...literalKeyFaults(model),
  );
  if (faults.length > 0) throw new TemplateError(template.name, faults);
  return model;
}

type Compiled = Required<Pick<Cell, "spoken" | "native">> & Pick<Cell, "inUse">;

/** Compiles the cells; a formula that all rows share is compiled once. */
class CellCompiler {
  readonly faults: string[] = [];
  /** By table, the condition that a row is in use. */
  readonly conditions = new Map<string, Condition>();
  /** By column, the sentences of checks. */
  private readonly sentences = new Map<string, Tree>();
  /** By name and text; in a first row a text has another meaning. */
  private readonly known = new Map<string, Map<string, Compiled | undefined>>();

  constructor(
    private readonly names: Names,
    private readonly inliner: Inliner,
    private readonly system: UnitSystem,
    private readonly sheets: readonly SheetDeclaration[],
  ) {}

  cell(spot: Spot, index: number): Cell {
    const { declaration, table, row } = spot;
    const unit = unitOf(declaration.quantity, this.system);
    const formula = this.formulaOf(spot);
    // a single cell stays a formula: all rows of a column are, but those that say the same whatever is given
    const mayBeFixed = declaration.kind === "calc" && table !== undefined;
    const constant = mayBeFixed ? constantOf(formula?.native) : undefined;
    const fixed = constant ?? fixedValue(spot, this.system);
    const compiled = constant === undefined ? formula : undefined;
    const says = this.sentenceOf(spot);
    return Object.freeze({
      index,
      id: spot.id,
      name: spot.name,
      ...(table === undefined ? {} : { table: table.name }),
      ...(row === undefined ? {} : { row }),
      declaration,
      unit,
      sheet: spot.sheet,
      column: spot.column,
      line: spot.line,
      implied: spot.implied,
      apart: isApart(spot.name),
      ...(fixed === undefined ? {} : { fixed }),
      ...compiled,
      ...(says === undefined ? {} : { says }),
    });
  }

  /** The sentence of a check in a table that has no message for each of its checks. */
  private sentenceOf(spot: Spot): Tree | undefined {
    const { declaration, table, key, name } = spot;
    if (declaration.kind !== "check" || table === undefined) return undefined;
    if (Object.hasOwn(table.columns, messageName(key))) return undefined;
    const known = this.sentences.get(name);
    if (known !== undefined) return known;
    try {
      const said = this.opened(`~${declaration.sentence}`, spot);
      const tree = this.checked(
        said,
        { ...declaration, quantity: textQuantity },
        this.names.scope(table, false),
      );
      this.sentences.set(name, tree);
      return tree;
    } catch (error) {
      // the message that shows it for the eye tells the fault
      if (error instanceof FormulaError) return undefined;
      throw error;
    }
  }

  private formulaOf(spot: Spot): Compiled | undefined {
    const { declaration, row = 1 } = spot;
    if (declaration.kind !== "calc" && declaration.kind !== "check") return undefined;
    const isFirst = declaration.kind === "calc" && declaration.first !== undefined && row === 1;
    const written =
      typeof declaration.formula === "function" ? declaration.formula(row) : declaration.formula;
    const text = isFirst ? (declaration.first as string) : written;
    const ofName = isFirst ? `${spot.name} first` : spot.name;
    const known = this.known.get(ofName) ?? new Map<string, Compiled | undefined>();
    this.known.set(ofName, known);
    if (!known.has(text)) known.set(text, this.compiled(spot, this.opened(text, spot), isFirst));
    return known.get(text);
  }

  /** A formula that begins with `~` is a sentence with figures in braces. */
  private opened(text: string, { table, declaration }: Spot): string {
    if (!text.startsWith("~")) return text;
    const reader = (declaration.kind === "calc" && declaration.reader) || "office";
    const audience = { system: this.system, reader };
    return sentenceFormula(text.slice(1), audience, figuresFor(this.sheets, table));
  }

  private compiled(spot: Spot, text: string, isFirst: boolean): Compiled | undefined {
    const { declaration, table } = spot;
    try {
      const above = declaration.kind === "calc" && declaration.first !== undefined && !isFirst;
      const scope = this.names.scope(table, above);
      const spoken = this.checked(text, declaration, scope);
      const whole =
        table?.filled === undefined
          ? spoken
          : this.whereFilled(spoken, declaration, scope, table, isFirst);
      const native = this.inliner.open(whole);
      const fault = this.asksForErrors(spot) ? undefined : (swallows(whole) ?? ofNoCell(native));
      if (fault !== undefined) throw new FormulaError(text, 0, fault);
      const inUse = table?.filled === undefined ? {} : { inUse: spoken };
      return { spoken: whole, native, ...inUse };
    } catch (error) {
      if (!(error instanceof FormulaError)) throw error;
      this.faults.push(`${spot.sheet}, ${spot.name}: ${error.message}`);
      return undefined;
    }
  }

  private asksForErrors({ sheet }: Spot): boolean {
    return this.sheets.some(({ name, asksForErrors }) => name === sheet && asksForErrors);
  }

  private checked(text: string, { quantity }: CellDeclaration, scope: Scope): Tree {
    const wanted = typeOfQuantity(quantity, this.system);
    const tree = fitTo(checkTree(parse(text), text, scope), wanted, text, scope);
    return quantity.kind === "text" ? asText(tree) : tree;
  }

  private whereFilled(
    tree: Tree,
    declaration: CellDeclaration,
    scope: Scope,
    table: TableBlock,
    isFirst: boolean,
  ): Tree {
    const condition = this.conditionOf(table).spoken;
    // a first row has no row above for its blank to look at
    const blank = (!isFirst && declaration.kind === "calc" && declaration.blank) || undefined;
    const otherwise =
      blank === undefined ? blankOf(declaration) : this.checked(blank, declaration, scope);
    return frozen({ kind: "call", name: "IF", args: [condition, tree, otherwise] });
  }

  /** The condition that a row of a table is worth a look, which no cell holds. */
  condition(table: TableBlock): void {
    const { name, shown } = table;
    if (shown === undefined || this.conditions.has(shownKey(name))) return;
    try {
      this.conditionNamed(shownKey(name), table, shown);
    } catch (error) {
      if (!(error instanceof FormulaError)) throw error;
      this.faults.push(`Table ${name}, shown: ${error.message}`);
    }
  }

  private conditionOf(table: TableBlock): Condition {
    return this.conditionNamed(table.name, table, table.filled ?? "TRUE");
  }

  private conditionNamed(key: string, table: TableBlock, text: string): Condition {
    const known = this.conditions.get(key);
    if (known !== undefined) return known;
    const scope = this.names.scope(table, false);
    const spoken = fitTo(checkTree(parse(text), text, scope), yesnoType, text, scope);
    const made = { spoken, native: this.inliner.open(spoken) };
    this.conditions.set(key, made);
    return made;
  }
}

/** A blank cell passed on as a text would show as 0: joined with nothing, it stays empty. */
function asText(tree: Tree): Tree {
  const sure =
    tree.kind === "text" ||
    (tree.kind === "binary" && tree.operator === "&") ||
    (tree.kind === "call" && natives.get(tree.name)?.makesText === true) ||
    (tree.kind === "call" && tree.name === "IF" && tree.args.slice(1).every(isText));
  if (sure) return tree;
  return frozen({ kind: "binary", operator: "&", left: tree, right: { kind: "text", value: "" } });
}

const isText = (tree: Tree): boolean => asText(tree) === tree;

/** What a row that is not in use holds: nothing for text, no complaint for a check, else zero. */
function blankOf(declaration: CellDeclaration): Tree {
  if (declaration.kind === "check") return { kind: "boolean", value: true };
  if (declaration.quantity.kind === "text") return { kind: "text", value: "" };
  if (declaration.quantity.kind === "yesno") return { kind: "boolean", value: false };
  return { kind: "number", value: 0 };
}

/**
 * Words that a formula says whatever is given: the cell holds them as they are. An empty text is no value of a cell,
 * and a figure or a yes always is a formula: that nobody typed it can be seen.
 */
const constantOf = (tree: Tree | undefined): string | undefined =>
  tree?.kind === "text" ? tree.value || undefined : undefined;

/** The value of a published cell, in the unit of the system. */
function fixedValue(spot: Spot, system: UnitSystem): InputValue | undefined {
  if (spot.declaration.kind !== "published") return undefined;
  const { quantity, value } = spot.declaration;
  const rows = spot.table?.data;
  const { repeats = spot.key, numbersRows, namesRows } = spot.declaration;
  if (numbersRows) return spot.row;
  if (namesRows) return spot.table?.rowNames?.[(spot.row ?? 1) - 1];
  const given = rows === undefined ? value : rows[(spot.row ?? 1) - 1]?.[repeats];
  return given === undefined ? undefined : inUnit(given, quantity, system);
}

/** A value declared in US units, in the unit of the system. */
export function inUnit(value: InputValue, quantity: Quantity, system: UnitSystem): InputValue {
  if (typeof value !== "number") return value;
  return Number((value * fromUs(quantity, system)).toPrecision(15));
}
