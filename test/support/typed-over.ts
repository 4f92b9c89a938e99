import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { addressOf } from "../../engine/address.js";
import type { Model } from "../../engine/template/model.js";

/** A workbook with numbers, plain texts, yes or no typed over some cells, by id, and nothing calculated anew. */
export function typedOver(
  bytes: Uint8Array,
  model: Model,
  edits: Readonly<Record<string, number | string | boolean>>,
): Uint8Array {
  const parts = unzipSync(bytes);
  // sheet 1 is Start; then come the sheets of the model in their order
  for (const [id, value] of Object.entries(edits)) {
    const cell = model.byId.get(id);
    const at = model.sheets.findIndex(({ name }) => name === cell?.sheet);
    const part = `xl/worksheets/sheet${at + 2}.xml`;
    const address = addressOf(cell?.column ?? 0, cell?.line ?? 0);
    const before = strFromU8(parts[part] as Uint8Array);
    const after = before.replace(
      new RegExp(`<c r="${address}"([^>]*?)(?: t="[^"]*")?(?:/>|>.*?</c>)`),
      typeof value === "number"
        ? `<c r="${address}"$1><v>${value}</v></c>`
        : typeof value === "boolean"
          ? `<c r="${address}"$1 t="b"><v>${Number(value)}</v></c>`
          : `<c r="${address}"$1 t="inlineStr"><is><t>${value}</t></is></c>`,
    );
    if (after === before) throw new Error(`The cell ${id} was not found in ${part}.`);
    parts[part] = strToU8(after);
  }
  // stored as they are: packing would take as long as a bid
  return zipSync(parts, { level: 0 });
}
