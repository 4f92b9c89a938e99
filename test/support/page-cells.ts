import type { Cell, Model } from "../../engine/template/model.js";
import { joint } from "../../sheets/parts/papers/grouped-lines.js";

/** The sheets whose pages leave the office. */
export const pages = {
  proposal: "Proposal",
  crew: "Crew",
  orders: "Orders",
  handOver: "Hand-over",
} as const;

export type PageName = keyof typeof pages;

/** The texts of a page handed out, from the top down. */
export const pageCells = (model: Model, page: PageName): Cell[] =>
  model.cells
    .filter(
      ({ sheet, declaration }) => sheet === pages[page] && declaration.quantity.kind === "text",
    )
    .sort((a, b) => a.line - b.line || a.column - b.column);

/** The lines that a cell of a page shows: on Crew, those beside a step stand in one cell, here each by itself again. */
export const linesOf = ({ name }: Cell, said: string): string[] =>
  name === "crew_steps.rest" && said !== "" ? said.split(joint) : [said];
