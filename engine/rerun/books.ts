import type { OfficeBook } from "../book/office-book.js";

/** An office has a few books; more than these are read again when they come back. */
const kept = 8;

/**
 * The office books that old job records name, read once each. A book that cannot be read
 * gives the reason instead.
 */
export class Books {
  readonly #known = new Map<string, Promise<OfficeBook | string>>();

  constructor(private readonly read: (path: string) => Promise<OfficeBook>) {}

  get(path: string): Promise<OfficeBook | string> {
    const known = this.#known.get(path);
    if (known !== undefined) return known;
    const oldest = this.#known.keys().next();
    if (this.#known.size >= kept && !oldest.done) this.#known.delete(oldest.value);
    const reading = this.#read(path);
    this.#known.set(path, reading);
    return reading;
  }

  async #read(path: string): Promise<OfficeBook | string> {
    try {
      return await this.read(path);
    } catch (error) {
      return error instanceof Error ? error.message : String(error);
    }
  }
}
