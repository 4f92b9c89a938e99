import { everywhere } from "../formula/everywhere.js";
import { FormulaError } from "../formula/formula-error.js";
import type { Inliner } from "../formula/inline.js";
import type { NamedFormula } from "../formula/named-formula.js";
import { swallows } from "../formula/refused.js";
import type { Tree } from "../formula/tree.js";
import { areaTable } from "./area.js";
import { figuresRightName, inputsRightName, ownNames } from "./checks-sheet.js";
import type { Cell, Model } from "./model.js";
import { formulaNameTrouble, nameTrouble, sheetNameTrouble } from "./names.js";
import { precedents } from "./order.js";
import { impliedNames } from "./structure.js";
import type { Template } from "./template.js";

/** Names that some program would misread, or that stand for two things. */
export function nameFaults(template: Template): string[] {
  const faults: string[] = [];
  const seen = new Map<string, string>();
  const claim = (name: string, where: string) => {
    const before = seen.get(name.toLowerCase());
    if (before !== undefined) {
      faults.push(`The name "${name}" stands twice: ${before} and ${where}. Rename one.`);
    }
    seen.set(name.toLowerCase(), where);
    const trouble = nameTrouble(name);
    if (trouble !== undefined)
      faults.push(`The name "${name}" (${where}) cannot be used: ${trouble}.`);
  };
  claim(areaTable, "the areas of the sheets");
  for (const name of ownNames) claim(name, "sheet Checks");
  for (const sheet of template.sheets) {
    const trouble = sheetNameTrouble(sheet.name);
    if (trouble !== undefined) faults.push(`Sheet "${sheet.name}": ${trouble}.`);
    // the names of the checks that a sheet's inputs and figures are right
    claim(inputsRightName(sheet.name), `made for sheet ${sheet.name}`);
    if (sheet.afterwards) claim(figuresRightName(sheet.name), `made for sheet ${sheet.name}`);
    for (const block of sheet.blocks) {
      if (block.kind === "lines" || block.kind === "prose" || block.kind === "panel") {
        for (const name of Object.keys(block.cells)) claim(name, `sheet ${sheet.name}`);
        for (const name of impliedNames(block)) claim(name, `made for sheet ${sheet.name}`);
      }
      if (block.kind !== "table") continue;
      claim(block.name, `table on sheet ${sheet.name}`);
      for (const key of Object.keys(block.columns)) {
        const fault = nameTrouble(key);
        if (fault !== undefined)
          faults.push(`The column "${block.name}.${key}" cannot be used: ${fault}.`);
      }
    }
  }
  for (const own of template.formulas) {
    const trouble = formulaNameTrouble(own.name);
    if (trouble !== undefined)
      faults.push(`The named formula "${own.name}" cannot be used: ${trouble}.`);
  }
  const doubled = [...everywhere, ...template.formulas].map(({ name }) => name);
  for (const name of new Set(doubled.filter((one, i) => doubled.indexOf(one) !== i))) {
    faults.push(`The named formula "${name}" is declared twice. Rename one.`);
  }
  return faults;
}

/** Named formulas whose bodies do not hold. */
export function formulaFaults(formulas: readonly NamedFormula[], inliner: Inliner): string[] {
  return formulas.flatMap((own) => {
    try {
      inliner.body(own);
      const fault = swallows(own.body);
      return fault === undefined ? [] : [`Named formula ${own.name}: ${fault}`];
    } catch (error) {
      if (!(error instanceof FormulaError)) throw error;
      return [`Named formula ${own.name}: ${error.message}`];
    }
  });
}

/** Cells of the bid that read what is typed or made after the work, which must not move it. */
export function afterwardsFaults(model: Model): string[] {
  const { sheets, order } = model;
  const after = new Set(sheets.flatMap(({ name, afterwards }) => (afterwards ? [name] : [])));
  if (after.size === 0) return [];
  const checks = new Set(
    sheets.flatMap(({ name, asksForErrors }) => (asksForErrors ? [name] : [])),
  );
  const faults = order.flatMap((cell) => {
    const isOfBid = !after.has(cell.sheet) && !checks.has(cell.sheet);
    if (!isOfBid || cell.native === undefined) return [];
    const read = precedents(model, cell.native, cell.row ?? 0).find((one) => after.has(one.sheet));
    if (read === undefined) return [];
    return [
      `${cell.sheet}, ${cell.name}: it reads "${read.name}" of sheet ${read.sheet}, which is filled in after the work. Nothing of the bid may: leave it out.`,
    ];
  });
  return [...new Set(faults)];
}

/** What the role `built` names that is no cell and no column, and inputs of it that a bid would be moved by. */
export function builtFaults({ template, tables, byId, sheets }: Model): string[] {
  const { built } = template.roles ?? {};
  if (built === undefined) return [];
  const { states: _, tasks, others, conditions, ...single } = built;
  const columns = [...Object.entries(tasks), ...Object.entries(others)];
  const after = new Set(sheets.flatMap(({ name, afterwards }) => (afterwards ? [name] : [])));
  const cellAt = (name: string) => {
    const [table = "", column = ""] = name.split(".");
    return byId.get(name) ?? tables.get(table)?.columns.get(column)?.cells[0];
  };
  return [
    ...Object.entries(single),
    ...columns,
    ...conditions.map((one) => ["conditions", one] as const),
  ].flatMap(([part, name]) => {
    const cell = cellAt(name);
    const where = `The role "built" names "${name}" as ${part}`;
    if (cell === undefined) return [`${where}, which is no cell and no column. Name one.`];
    const isInput = cell.declaration.kind === "input" && part !== "conditions";
    if (!isInput || after.has(cell.sheet)) return [];
    return [
      `${where}, an input of sheet ${cell.sheet}, which is not filled in after the work. Mark that sheet \`afterwards\`.`,
    ];
  });
}

/** The message beside an input, as against the sentence of a check. */
const isStatus = ({ implied, name }: Cell): boolean => implied && /[._]status$/.test(name);

/** A role that names the file of the logo must name a cell that holds such a name. */
export function logoFaults({ template, byId }: Model): string[] {
  const name = template.roles?.logo;
  const { declaration } = byId.get(name ?? "") ?? {};
  if (name === undefined) return [];
  if (declaration?.kind === "input" && declaration.quantity.kind === "text") return [];
  return [`The role "logo" names "${name}", which is no text input. Name one.`];
}

/**
 * Inputs that nothing depends on but their own message, or that are only shown again: a person would fill them in for
 * nothing. That which names the logo is read as a bid is written.
 */
export function unusedInputFaults(model: Model): string[] {
  const used = new Set([model.template.roles?.logo]);
  const looked = new Set<Tree>();
  for (const cell of model.order) {
    // to look for an error in an input is not to use it
    if (
      isStatus(cell) ||
      cell.declaration.repeats !== undefined ||
      cell.declaration.beside ||
      cell.apart ||
      cell.native === undefined ||
      // other rows of a formula name nothing else
      looked.has(cell.native)
    )
      continue;
    looked.add(cell.native);
    for (const needed of precedents(model, cell.native, cell.row ?? 0)) used.add(needed.name);
  }
  const inputs = model.cells.filter(({ declaration }) => declaration.kind === "input");
  const names = new Set(inputs.map(({ name }) => name));
  return [...names]
    .filter((name) => !used.has(name))
    .map((name) => `The input "${name}" is used by no formula. Use it, or take it out.`);
}
