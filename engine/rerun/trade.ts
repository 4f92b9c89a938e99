import type { OfficeBook } from "../book/office-book.js";
import { readOfficeBook } from "../book/read.js";
import { layoutOf } from "../template/office-layout.js";
import type { Template } from "../template/template.js";

/** What a trade brings to the engine: its templates, old versions too, and how its office book is read. */
export interface Trade {
  readonly templates: readonly Template[];
  /** Reads and checks an office book. Throws RillbookError. */
  readonly readBook: (path: string) => Promise<OfficeBook>;
}

/**
 * A trade by its templates; the newest template that reads an office book says how it is laid out, one of the
 * office's own before those that come along.
 */
export function tradeOf(templates: readonly Template[]): Trade {
  const isOwn = ({ own }: Template) => Number(own !== undefined);
  const newest = [...templates].sort((a, b) => isOwn(b) - isOwn(a) || b.version - a.version);
  const reads = newest.find(({ office }) => office !== undefined) ?? newest[0];
  const layout = reads === undefined ? [] : layoutOf(reads);
  return { templates, readBook: (path) => readOfficeBook(path, layout) };
}
