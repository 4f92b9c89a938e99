import type { BookLayout } from "../../../engine/template/book-layout.js";
import {
  calc,
  input,
  type LinesBlock,
  money,
  type Template,
  template,
  text,
} from "../../../engine/template/index.js";
import { fence } from "../../support/fence.js";

const layout: BookLayout = [
  {
    name: "items",
    sheet: "Items",
    means: "What is bought.",
    columns: [
      { key: "code", kind: "code", means: "Code", required: true },
      { key: "unit_price", kind: "number", means: "Price in $" },
      { key: "supplier", kind: "text", means: "Supplier" },
      { key: "good_until", kind: "date", means: "Last day of the quote" },
    ],
  },
];

/** The template with other cells in the block of lines of that heading. */
function changed(from: Template, heading: string, cells: LinesBlock["cells"]): Template["sheets"] {
  return from.sheets.map((sheet) => ({
    ...sheet,
    blocks: sheet.blocks.map((block) =>
      block.kind === "lines" && block.heading === heading
        ? { ...block, cells: { ...block.cells, ...cells } }
        : block,
    ),
  }));
}

const roles = {
  price: "price",
  cost: "cost",
  contingency: "set_aside",
  sections: [
    { label: "Materials", name: "materials" },
    { label: "Labor", name: "labor" },
  ],
  goodUntil: "items.good_until",
};

const setAside = calc(money, "(materials+labor)*0.05", "Contingency");
const cost = calc(money, "materials+labor+set_aside", "Cost");

/** The invented fence as it was: with a colour, and labor at $75 a post. */
export const fenceThree = template({
  ...fence,
  office: layout,
  roles,
  sheets: changed(fence, "Price", {
    cost,
    set_aside: setAside,
    colour: input(text, "Colour", { optional: true }),
    colour_shown: calc(text, 'colour&" paint"', "Paint"),
  }),
});

/** The next version: no colour, and labor by a rate. */
export const fenceFour = template({
  ...fence,
  version: 4,
  office: layout,
  roles,
  sheets: changed(fence, "Price", {
    cost,
    set_aside: setAside,
    labor_rate: input(money, "Labor for a post", { default: 90, least: 0 }),
    labor: calc(money, "total_posts*labor_rate", "Labor"),
  }),
});

export const templates: readonly Template[] = [fenceThree, fenceFour];
