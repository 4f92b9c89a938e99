import type { PriceBook } from "../book/price-book.js";

/** An office has a few books; more than these are read again when they come back. */
const kept = 8;

/**
 * The price books that old job records name, read once each. A book that cannot be read
 * gives the reason instead.
 */
export class Books {
  readonly #known = new Map<string, Promise<PriceBook | string>>();

  constructor(private readonly read: (path: string) => Promise<PriceBook>) {}

  get(path: string): Promise<PriceBook | string> {
    const known = this.#known.get(path);
    if (known !== undefined) return known;
    const oldest = this.#known.keys().next();
    if (this.#known.size >= kept && !oldest.done) this.#known.delete(oldest.value);
    const reading = this.#read(path);
    this.#known.set(path, reading);
    return reading;
  }

  async #read(path: string): Promise<PriceBook | string> {
    try {
      return await this.read(path);
    } catch (error) {
      return error instanceof Error ? error.message : String(error);
    }
  }
}
