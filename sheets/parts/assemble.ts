import {
  type AskingSheet,
  type Block,
  type SheetDeclaration,
  type Template,
  template,
} from "../../engine/template/index.js";
import { asks } from "../plan/asks.js";
import { type SheetName, type Worksheet, worksheets } from "../plan/worksheets.js";
import { officeBookLayout } from "./book/office-book.js";
import type { Whole } from "./brought.js";
import { buysTable } from "./materials/buys.js";
import type { Part, Placed } from "./part.js";
import { wholeOf } from "./whole.js";

type Roles = NonNullable<Template["roles"]>;

/** A template without what its parts bring. */
type Frame = Pick<Template, "name" | "version" | "title" | "headline" | "example" | "sharesBook"> & {
  readonly roles: Omit<Roles, "told" | "office">;
};

/** A template from its parts: the worksheets of the plan, filled with what each part brings. */
export function assemble(frame: Frame, parts: readonly Part[]): Template {
  const all = wholeOf(parts);
  const sheets = sheetsOf(parts, all);
  return template({
    ...frame,
    office: officeBookLayout(all),
    roles: {
      ...frame.roles,
      told: parts.flatMap(({ told = [] }) => told),
      office: parts.flatMap(({ office = [] }) => office),
    },
    sheets,
    asks: asksOf(sheets),
    formulas: [...new Set(parts.flatMap(({ formulas = [] }) => formulas))],
  });
}

/** What a template of these parts asks of an office book. */
export function bookOf(name: string, parts: readonly Part[]): Pick<Template, "name" | "sheets" | "office"> {
  const all = wholeOf(parts);
  return { name, office: officeBookLayout(all), sheets: sheetsOf(parts, all) };
}

/** The worksheets to which these parts bring something, in the order of the plan. */
export function sheetsOf(parts: readonly Part[], all: Whole = wholeOf(parts)): SheetDeclaration[] {
  return worksheets.flatMap((worksheet: Worksheet) => {
    const name = worksheet.name as SheetName;
    const of = (placed: Placed = {}) => (placed[name] ?? []).flatMap((one) => madeOf(one, all));
    const blocks = [
      ...parts.flatMap((part) => inSection(part, of(part.blocks))),
      ...all.buys.flatMap((one) => (one.sheet === name ? [buysTable(one)] : [])),
      ...parts.flatMap((part) => inSection(part, of(part.below))),
    ];
    return blocks.length === 0
      ? []
      : [Object.freeze({ ...worksheet, purpose: all.purposes[name] ?? worksheet.purpose, blocks })];
  });
}

/** The sheets that ask, each with those sections of the plan in which this template asks something. */
export function asksOf(sheets: readonly SheetDeclaration[]): AskingSheet[] {
  const asked = new Set(sheets.flatMap(({ blocks }) => blocks.flatMap(sectionsOf)));
  return asks.map((ask) => ({
    ...ask,
    sections: ask.sections.filter((section) => asked.has(`${ask.asked}: ${section}`)),
  }));
}

/** By whom and in which section the inputs of a block are asked. */
function sectionsOf(block: Block): string[] {
  if (block.kind !== "lines" && block.kind !== "table") return [];
  const cells = Object.values(block.kind === "lines" ? block.cells : block.columns);
  return cells.flatMap((cell) =>
    cell.kind === "input" && cell.asked !== undefined
      ? [`${cell.asked}: ${cell.section ?? block.section ?? block.heading}`]
      : [],
  );
}

/** Blocks whose inputs stand, on the sheets that ask for them, in the section of their part. */
function inSection({ name, section = name }: Part, blocks: readonly Block[]): Block[] {
  return blocks.map((block) =>
    block.kind === "lines" || block.kind === "table" ? Object.freeze({ section, ...block }) : block,
  );
}

type Placeable = NonNullable<Placed[SheetName]>[number];

function madeOf(one: Placeable, all: Whole): readonly Block[] {
  const made = typeof one === "function" ? one(all) : one;
  return Array.isArray(made) ? made : [made as Block];
}
