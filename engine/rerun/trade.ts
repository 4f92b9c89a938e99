import type { PriceBook } from "../book/price-book.js";
import { readPriceBook } from "../book/read.js";
import type { Template } from "../template/template.js";

/** What a trade brings to the engine: its templates, old versions too, and how its price book is read. */
export interface Trade {
  readonly templates: readonly Template[];
  /** Reads and checks a price book. Throws RillbookError. */
  readonly readBook: (path: string) => Promise<PriceBook>;
}

/** A trade by its templates; the newest template that reads a price book says how it is laid out. */
export function tradeOf(templates: readonly Template[]): Trade {
  const newest = [...templates].sort((a, b) => b.version - a.version);
  const layout = newest.find(({ prices }) => prices !== undefined)?.prices ?? [];
  return { templates, readBook: (path) => readPriceBook(path, layout) };
}
