import type { PriceBook } from "../job/price-book.js";
import type { Template } from "../template/template.js";

/** What a trade brings to the engine: its templates, old versions too, and how its price book is read. */
export interface Trade {
  readonly templates: readonly Template[];
  /** Reads and checks a price book. Throws RillbookError. */
  readonly readBook: (path: string) => Promise<PriceBook>;
}
