/** Of how many templates, or versions of one, what was read is kept. */
const mostOfPlace = 3;
/** Characters of all texts that are kept: those of three templates take a fifth. */
const mostKept = 16e6;

interface Kept {
  readonly text: string;
  readonly read: unknown;
}

/**
 * What was read of earlier workbooks, for those that come after: two jobs of one template have most of their markup in
 * common. It is found again by its whole text alone, so that nothing counts as read that stands otherwise. What stands in
 * places that came up long ago is dropped, whatever a folder of strange workbooks brings.
 */
export class KeptParts {
  /** The place that was added to last stands last. */
  readonly #kept = new Map<string, readonly Kept[]>();
  #size = 0;

  /** How many characters of texts are kept. */
  get size(): number {
    return this.#size;
  }

  /** @param place where the text stands, and what is made of it: what is kept there is of one type */
  find<T>(place: string, text: string): T | undefined {
    return this.#kept.get(place)?.find((one) => one.text === text)?.read as T | undefined;
  }

  keep<T extends object>(place: string, text: string, read: T): T {
    const kept = [{ text, read }, ...(this.#kept.get(place) ?? [])].slice(0, mostOfPlace);
    this.#drop(place);
    this.#kept.set(place, kept);
    this.#size += sizeOf(kept);
    for (const oldest of this.#kept.keys()) {
      if (this.#size <= mostKept) break;
      this.#drop(oldest);
    }
    return read;
  }

  #drop(place: string): void {
    this.#size -= sizeOf(this.#kept.get(place) ?? []);
    this.#kept.delete(place);
  }
}

const sizeOf = (kept: readonly Kept[]): number =>
  kept.reduce((sum, { text }) => sum + text.length, 0);
