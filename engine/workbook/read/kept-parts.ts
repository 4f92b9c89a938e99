/** Of how many templates, or versions of one, what was read is kept. */
const most = 3;

/**
 * What was read of earlier workbooks, for those that come after: two jobs of one template have most of their markup in
 * common. It is found again by its whole text alone, so that nothing counts as read that stands otherwise.
 */
export class KeptParts {
  readonly #kept = new Map<string, readonly { readonly text: string; readonly read: unknown }[]>();

  /** @param place where the text stands, and what is made of it: what is kept there is of one type */
  find<T>(place: string, text: string): T | undefined {
    return this.#kept.get(place)?.find((one) => one.text === text)?.read as T | undefined;
  }

  keep<T extends object>(place: string, text: string, read: T): T {
    const others = this.#kept.get(place) ?? [];
    this.#kept.set(place, [{ text, read }, ...others].slice(0, most));
    return read;
  }
}
