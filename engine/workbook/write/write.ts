import type { Value } from "../../formula/value.js";
import type { Model } from "../../template/model.js";
import { partsOf } from "./book/parts.js";
import { Charts } from "./charts/add.js";
import type { Identity } from "./identity.js";
import { bookOf } from "./lay-out.js";
import { propertiesOf } from "./own-properties.js";
import { contentTypesFirst } from "./package.js";
import { type Level, type Packed, packing, zipOf } from "./zip.js";

/** A way to write the workbook of a job. */
export type WriteWorkbook = (
  model: Model,
  values: readonly Value[],
  identity: Identity,
) => Promise<Uint8Array>;

/**
 * Writes a job as an .xlsx: every sheet of the model with live formulas and their
 * values cached, in one pass from top to bottom. The same arguments give the same bytes.
 * @param level 0 for bytes that are read again at once
 */
export async function writeWorkbook(
  model: Model,
  values: readonly Value[],
  identity: Identity,
  level: Level = 6,
): Promise<Uint8Array> {
  const { book, places } = bookOf(model, values, identity);
  const charts = new Charts({ model, values }, places);
  const packed: Promise<Packed>[] = [];
  // each part is packed by other threads while the next one is spelled
  for (const [name, xml] of partsOf(book, propertiesOf(model, values, identity), charts)) {
    packed.push(packing(name, Buffer.from(xml), level));
  }
  const files = await Promise.all(packed);
  return zipOf(files.sort((a, b) => contentTypesFirst(a.name, b.name)));
}
