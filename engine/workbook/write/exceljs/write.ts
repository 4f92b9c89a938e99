import type { Value } from "../../../formula/value.js";
import type { Model } from "../../../template/model.js";
import { Charts } from "../charts/add.js";
import type { Identity } from "../identity.js";
import { bookOf } from "../lay-out.js";
import { propertiesOf } from "../own-properties.js";
import { finishedParts, zipped } from "../package.js";
import { withCharts } from "./charts.js";
import { copyOf } from "./copy.js";

/**
 * Writes a job as `writeWorkbook` does, but through exceljs, which takes several times as long: a second,
 * independent writer of the same file. What exceljs lacks (charts, custom properties) is added to its package.
 */
export async function writeThroughExceljs(
  model: Model,
  values: readonly Value[],
  identity: Identity,
): Promise<Uint8Array> {
  const { book, places } = bookOf(model, values, identity);
  const workbook = await copyOf(book);
  // stored as they are: the parts are packed once, when all of them are there
  const written = new Uint8Array(
    await workbook.xlsx.writeBuffer({ zip: { compression: "STORE" } }),
  );
  const parts = finishedParts(written, propertiesOf(model, values, identity));
  const charts = new Charts({ model, values }, places);
  return zipped(withCharts(parts, book, charts));
}
