import { cellText, head } from "./text.js";

const space = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

/** Is a text written so that the spaces around it count? */
export const keepsSpaces = (text: string): boolean => /^\s|\n|\s$/.test(text);

/** The texts of a book, each kept once (ISO/IEC 29500-1, 18.4). */
export class Texts {
  readonly #places = new Map<string, number>();
  #used = 0;

  /** The place of a text in the list. */
  placeOf(text: string): number {
    this.#used += 1;
    const known = this.#places.get(text);
    if (known !== undefined) return known;
    const place = this.#places.size;
    this.#places.set(text, place);
    return place;
  }

  xml(): string {
    let items = "";
    for (const text of this.#places.keys()) {
      const keeps = keepsSpaces(text) ? ' xml:space="preserve"' : "";
      items += `<si><t${keeps}>${cellText(text)}</t></si>`;
    }
    return `${head}<sst xmlns="${space}" count="${this.#used}" uniqueCount="${this.#places.size}">${items}</sst>`;
  }
}
