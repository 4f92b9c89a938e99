import { count, fromUs, text, type UnitSystem, unitOf } from "../units/quantity.js";
import {
  type CalcDeclaration,
  type CellDeclaration,
  calc,
  type InputDeclaration,
  isOffice,
  type LinesBlock,
  published,
  type TableBlock,
} from "./declare.js";
import {
  copyName,
  messageName,
  overridden,
  repeatKey,
  statusKey,
  statusName,
  toDo,
} from "./implied-names.js";
import { standsReady } from "./own-rows.js";
import { type Figure, sentenceFormula, textLiteral } from "./sentence.js";
import { inputsOn, placesOf, repeatsOn, workingsSheet } from "./spread.js";

/*
 * The cells that follow from a declaration: beside each input a message that stays
 * empty while the input keeps to its rule, beside each check its sentence. So the
 * rules hold in any spreadsheet, also for values that were pasted over validation.
 */
const toDoLabel = "What to do";

type Figures = (name: string) => Figure | undefined;

/** The message cells of a block of lines, by the name of the cell they stand beside. */
export function impliedLines(
  block: LinesBlock,
  system: UnitSystem,
  figures: Figures,
): Map<string, { name: string; declaration: CalcDeclaration }> {
  const implied = new Map<string, { name: string; declaration: CalcDeclaration }>();
  for (const [name, declaration] of Object.entries(block.cells)) {
    const made = impliedFor(name, declaration, system, figures);
    if (made !== undefined) implied.set(name, made);
  }
  return implied;
}

function impliedFor(
  name: string,
  declaration: CellDeclaration,
  system: UnitSystem,
  figures: Figures,
): { name: string; declaration: CalcDeclaration } | undefined {
  if (declaration.kind === "check") {
    return {
      name: messageName(name),
      declaration: messageOf(name, declaration.sentence, system, figures, '"ok"'),
    };
  }
  if (declaration.kind !== "input") return undefined;
  const fine = likeBook([[name, declaration]]);
  const rule = inputTrouble(name, declaration, system, fine);
  const trouble = rule ?? (isOffice(declaration) ? fine : undefined);
  if (trouble === undefined) return undefined;
  return { name: statusName(name), declaration: calc(text, trouble, "") };
}

function messageOf(
  name: string,
  sentence: string,
  system: UnitSystem,
  figures: Figures,
  fine: string,
): CalcDeclaration {
  const said = sentenceFormula(sentence, { system, reader: "office" }, figures);
  return calc(text, `IF(${name},${fine},${said})`, "");
}

/**
 * The columns to add to a table: a sentence for each check, on each sheet one status for the inputs
 * of the row that are typed there, and what is shown again of columns that stand elsewhere.
 */
export function impliedColumns(
  block: TableBlock,
  system: UnitSystem,
  figures: Figures,
): Record<string, CellDeclaration> {
  const implied: Record<string, CellDeclaration> = atHome(block, system, figures);
  for (const where of placesOf(block)) {
    if (where !== undefined) {
      for (const [key, status] of Object.entries(inputStatus(block, where, system))) {
        implied[key] = { ...status, label: toDoLabel };
      }
    }
    for (const key of repeatsOn(block, where)) {
      const declaration = block.columns[key] as CellDeclaration;
      implied[repeatKey(key, where)] = headOfRow(block, key, declaration, where);
    }
  }
  return implied;
}

/**
 * What a row has to say where its table is declared. A message alone stands as it is. Of several, one column
 * shows the first for the eye: a fault of the inputs, then the sentence of the first check that fails.
 */
function atHome(
  block: TableBlock,
  system: UnitSystem,
  figures: Figures,
): Record<string, CalcDeclaration> {
  const status = inputStatus(block, undefined, system);
  const checks = Object.entries(block.columns).flatMap(([name, declaration]) =>
    declaration.kind === "check" && !block.unseen ? [[name, declaration.sentence] as const] : [],
  );
  const [home] = Object.keys(status);
  const [only] = checks;
  if (only === undefined || (checks.length === 1 && home === undefined)) {
    const message =
      only === undefined
        ? status
        : { [messageName(only[0])]: messageOf(...only, system, figures, '""') };
    return Object.fromEntries(
      Object.entries(message).map(([key, made]) => [key, { ...made, label: toDoLabel }]),
    );
  }
  const audience = { system, reader: "office" } as const;
  const first = checks.reduceRight(
    (rest, [name, sentence]) =>
      `IF(${name},${rest},${sentenceFormula(sentence, audience, figures)})`,
    '""',
  );
  const inTurn = home === undefined ? first : `IF(LEN(${home})>0,${home},${first})`;
  const stray = home === undefined ? {} : { blank: home };
  return { ...status, [toDo]: calc(text, inTurn, toDoLabel, stray) };
}

/** One status for all inputs of the row that stand on a sheet; none where no input does. */
function inputStatus(
  block: TableBlock,
  where: string | undefined,
  system: UnitSystem,
): Record<string, CalcDeclaration> {
  const inputs = inputsOn(block, where);
  if (inputs.length === 0) return {};
  const blank = strayInputs(block, where, system);
  return {
    [statusKey(where)]: calc(
      text,
      rowStatus(inputs, system, toldWhereTyped(block, inputs)),
      "Input",
      { blank },
    ),
  };
}

/** What heads a row away from home: what is fixed of it where that is enough, else what stands at home. */
function headOfRow(
  { columns, rowNames }: TableBlock,
  key: string,
  declaration: CellDeclaration,
  where: string | undefined,
): CellDeclaration {
  const isFirst = key === Object.keys(columns)[0];
  if (!isFirst || where === undefined || declaration.kind === "published") {
    return shownAgain(key, declaration);
  }
  if (where === workingsSheet) return rowNumber(key, declaration);
  if (rowNames === undefined) return shownAgain(key, declaration);
  const named = published(text, declaration.label, { source: "the rows of the table" });
  return { ...named, repeats: key, namesRows: true };
}

/** What heads a row among the workings, where nobody reads page by page: its number in the table. */
const rowNumber = (key: string, { label }: CellDeclaration): CellDeclaration => ({
  ...published(count, `${label}, row`, { source: "the rows of the table" }),
  repeats: key,
  numbersRows: true,
});

/** A cell that shows another one again; of a published figure, the figure. */
export function shownAgain(key: string, declaration: CellDeclaration): CellDeclaration {
  const { label, quantity, decimals } = declaration;
  const alike = { ...(decimals === undefined ? {} : { decimals }), repeats: key };
  if (declaration.kind === "published") return { kind: "published", quantity, label, ...alike };
  // a blank input that is shown again must not read as a zero
  const optional = declaration.kind === "input" && declaration.optional === true;
  const zero = optional && quantity.kind === "number" ? { zero: "" } : {};
  return { ...calc(quantity, key, label, zero), ...alike };
}

/** The checks that are told where one of these inputs is typed: what fails, and the words. */
export const toldWhereTyped = (block: TableBlock, inputs: readonly [string, InputDeclaration][]) =>
  Object.entries(block.columns).flatMap(([name, declaration]) =>
    declaration.kind === "check" && inputs.some(([input]) => input === declaration.toldAt?.input)
      ? [[name, `← ${declaration.toldAt?.says}`] as const]
      : [],
  );

function rowStatus(
  inputs: readonly [string, InputDeclaration][],
  system: UnitSystem,
  checks: readonly (readonly [check: string, says: string])[],
): string {
  const troubles = inputs.map(([name, declaration]) => {
    const trouble = inputTrouble(name, declaration, system);
    return trouble === undefined ? undefined : ([declaration.label, trouble] as const);
  });
  let formula = checks.reduceRight(
    (rest, [check, says]) => `IF(${check},${rest},${textLiteral(says)})`,
    likeBook(inputs),
  );
  for (const found of troubles.reverse()) {
    if (found === undefined) continue;
    const [label, trouble] = found;
    formula = `IF(LEN(${trouble})>0,${textLiteral(`${label} `)}&${trouble},${formula})`;
  }
  return formula;
}

/**
 * Of a row that is not in use, what it still needs: an input on this sheet, else one on another. It must hold
 * nothing but what stands ready in every row, or what it holds would be passed over in silence.
 */
function strayInputs(block: TableBlock, where: string | undefined, system: UnitSystem): string {
  if (block.filled === undefined) return '""';
  const fine = likeBook(inputsOn(block, where));
  const inputs = [...new Set([where, ...placesOf(block)])].flatMap((place) =>
    inputsOn(block, place).map(([name, declaration]) => ({ name, declaration, place })),
  );
  const isReady = ({ declaration }: { declaration: InputDeclaration }) =>
    standsReady(block, declaration);
  const idle = inputs.flatMap((one) => {
    const { name, declaration, place } = one;
    if (!isReady(one)) return [`ISBLANK(${name})`];
    const usual = literalOf(declaration, system);
    return place === where ? [`OR(ISBLANK(${name}),${name}=${usual})`] : [];
  });
  const needed = inputs.filter(
    (one) =>
      !isReady(one) && !one.declaration.optional && one.declaration.quantity.kind !== "yesno",
  );
  const lacking = needed.reduceRight((rest, { name, declaration, place }) => {
    const elsewhere = place === where ? "" : ` on ${place ?? "its own sheet"}`;
    return `IF(ISBLANK(${name}),${textLiteral(`← ${declaration.label} needed${elsewhere}`)},${rest})`;
  }, '"← row not in use: complete or clear it"');
  return `IF(AND(${idle.join(",")}),${fine},${lacking})`;
}

/** The default of an input as a formula writes it. */
function literalOf(declaration: InputDeclaration, system: UnitSystem): string {
  const { default: usual, quantity } = declaration;
  if (typeof usual === "boolean") return usual ? "TRUE" : "FALSE";
  if (typeof usual !== "number") return textLiteral(String(usual));
  const here = Number((usual * fromUs(quantity, system)).toPrecision(15));
  return `${here}[${unitOf(quantity, system).name}]`;
}

/** A text formula: empty while the inputs of the office have what its book says. */
function likeBook(inputs: readonly (readonly [string, InputDeclaration])[]): string {
  const same = inputs
    .filter(([, declaration]) => isOffice(declaration))
    .map(([name]) => `${name}=${copyName(name)}`);
  if (same.length === 0) return '""';
  const test = same.length === 1 ? same[0] : `AND(${same.join(",")})`;
  return `IF(${test},"",${textLiteral(overridden)})`;
}

/**
 * A text formula: while the input keeps to its rule empty, or what `fine` says, else the rule in few words.
 * None, where it has no rule.
 */
function inputTrouble(
  name: string,
  declaration: InputDeclaration,
  system: UnitSystem,
  fine = '""',
): string | undefined {
  const { quantity } = declaration;
  const needed = declaration.optional ? fine : '"← needed"';
  if (declaration.choices !== undefined) {
    const known =
      typeof declaration.choices === "string"
        ? `LISTED(${declaration.choices},${name})`
        : `OR(${declaration.choices.map((one) => `${name}=${textLiteral(one)}`).join(",")})`;
    return `IF(ISBLANK(${name}),${needed},IF(${known},${fine},"← not one of the choices"))`;
  }
  if (quantity.kind === "text") {
    return declaration.optional ? undefined : `IF(ISBLANK(${name}),"← needed",${fine})`;
  }
  if (quantity.kind === "yesno") return undefined;
  const rule = textLiteral(`← ${ruleInWords(declaration, system)}`);
  const within = withinRange(name, declaration, system);
  return `IF(ISBLANK(${name}),${needed},IF(ISNUMBER(${name}),IF(${within},${fine},${rule}),"← a number, please"))`;
}

function withinRange(name: string, declaration: InputDeclaration, system: UnitSystem): string {
  const unit = unitOf(declaration.quantity, system);
  const limit = (value: number) => `${inSystem(value, declaration, system)}[${unit.name}]`;
  const rules: string[] = [];
  if (declaration.least !== undefined) rules.push(`${name}>=${limit(declaration.least)}`);
  if (declaration.most !== undefined) rules.push(`${name}<=${limit(declaration.most)}`);
  if (declaration.whole) rules.push(`${name}=INT(${name})`);
  return rules.length === 0 ? "TRUE" : `AND(${rules.join(",")})`;
}

/** A limit in the units of the system, to six figures: rules are round numbers. */
export function inSystem(value: number, declaration: CellDeclaration, system: UnitSystem): number {
  return Number((value * fromUs(declaration.quantity, system)).toPrecision(6));
}

/** `0.5 to 30 ft`: the rule of an input for people. */
export function ruleInWords(declaration: InputDeclaration, system: UnitSystem): string {
  const { quantity, least, most } = declaration;
  const show = (value: number) => {
    const here = inSystem(value, declaration, system);
    return quantity.percent ? `${Number((here * 100).toPrecision(6))}%` : String(here);
  };
  const unit = quantity.kind === "date" ? "" : unitOf(quantity, system).name;
  const whole = declaration.whole ? "a whole number, " : "";
  const range =
    quantity.kind === "date"
      ? "a date"
      : least !== undefined && most !== undefined
        ? `${show(least)} to ${show(most)}`
        : least !== undefined
          ? `at least ${show(least)}`
          : most !== undefined
            ? `at most ${show(most)}`
            : "any number";
  return `${whole}${range}${unit === "" ? "" : ` ${unit}`}`;
}
