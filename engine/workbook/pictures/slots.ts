import type { Model } from "../../template/model.js";

/** A place that a page keeps for a picture: its cells, rows and columns counted from 1. */
export interface Slot {
  readonly sheet: string;
  readonly look: "slot" | "photo" | "logo";
  readonly from: { readonly row: number; readonly column: number };
  readonly to: { readonly row: number; readonly column: number };
}

/** The places for pictures of all pages of a model, as it is laid out. */
export function slotsOf(model: Model): Slot[] {
  return model.placed.flatMap(({ block, sheet, top }) => {
    if (block.kind !== "panel") return [];
    return block.rows.flatMap(({ places }, i) =>
      places.flatMap(({ look, across: [column, count], down = 1 }): Slot[] => {
        if (look !== "slot" && look !== "photo" && look !== "logo") return [];
        const from = { row: top + i, column };
        return [
          { sheet, look, from, to: { row: from.row + down - 1, column: column + count - 1 } },
        ];
      }),
    );
  });
}
