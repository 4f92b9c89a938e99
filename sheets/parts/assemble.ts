import { type Block, type SheetDeclaration, type Template, template } from "../../engine/template/index.js";
import { asks } from "../plan/asks.js";
import { type SheetName, type Worksheet, worksheets } from "../plan/worksheets.js";
import { officeBookLayout } from "./book/office-book.js";
import type { Whole } from "./brought.js";
import { buysTable } from "./materials/buys.js";
import type { Part, Placed } from "./part.js";
import { wholeOf } from "./whole.js";

type Roles = NonNullable<Template["roles"]>;

/** A template without what its parts bring. */
type Frame = Pick<Template, "name" | "version" | "title" | "headline" | "example"> & {
  readonly roles: Omit<Roles, "told" | "office">;
};

/** A template from its parts: the worksheets of the plan, filled with what each part brings. */
export function assemble(frame: Frame, parts: readonly Part[]): Template {
  const all = wholeOf(parts);
  return template({
    ...frame,
    office: officeBookLayout(all),
    roles: {
      ...frame.roles,
      told: parts.flatMap(({ told = [] }) => told),
      office: parts.flatMap(({ office = [] }) => office),
    },
    sheets: sheetsOf(parts, all),
    asks,
    formulas: [...new Set(parts.flatMap(({ formulas = [] }) => formulas))],
  });
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
    return blocks.length === 0 ? [] : [Object.freeze({ ...worksheet, blocks })];
  });
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
