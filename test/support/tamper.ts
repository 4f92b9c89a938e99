import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { columnLetters } from "../../engine/address.js";
import type { Model } from "../../engine/template/model.js";

/** A workbook taken apart, to be changed as a forger would: in its XML, cached values and all. */
export class Tampered {
  private readonly parts: Record<string, Uint8Array>;

  constructor(
    bytes: Uint8Array,
    private readonly model: Model,
  ) {
    this.parts = unzipSync(bytes);
  }

  bytes(): Uint8Array {
    // stored as they are: packing would take as long as an audit
    return zipSync(this.parts, { level: 0 });
  }

  partNames(): string[] {
    return Object.keys(this.parts);
  }

  text(part: string): string {
    return strFromU8(this.parts[part] as Uint8Array);
  }

  put(part: string, text: string): void {
    this.parts[part] = strToU8(text);
  }

  /** Changes the text of a part; a change that changes nothing is a fault of the test. */
  change(part: string, edit: (xml: string) => string): this {
    const before = this.text(part);
    const after = edit(before);
    if (after === before) throw new Error(`Nothing was changed in ${part}.`);
    this.put(part, after);
    return this;
  }

  /** Changes a sheet by its name. */
  sheet(name: string, edit: (xml: string) => string): this {
    const names = [...this.text("xl/workbook.xml").matchAll(/<sheet [^>]*?name="([^"]*)"/g)];
    const place = names.findIndex(([, found]) => found === name);
    if (place < 0) throw new Error(`No sheet ${name}.`);
    return this.change(`xl/worksheets/sheet${place + 1}.xml`, edit);
  }

  /** Changes the inside of a cell, `<f>…</f><v>…</v>`, and its type. */
  at(sheet: string, address: string, edit: (inside: string) => string, type?: string): this {
    const cell = new RegExp(`<c r="${address}"([^>]*?)(?:/>|>(.*?)</c>)`);
    return this.sheet(sheet, (xml) =>
      xml.replace(cell, (_, attributes: string, inside = "") => {
        const kept = type === undefined ? attributes : attributes.replace(/ t="[^"]*"/, "");
        const typed = type === undefined || type === "n" ? "" : ` t="${type}"`;
        return `<c r="${address}"${kept}${typed}>${edit(inside)}</c>`;
      }),
    );
  }

  /** As `at`, for a cell of the model by its id. */
  cell(id: string, edit: (inside: string) => string, type?: string): this {
    const cell = this.model.byId.get(id);
    if (cell === undefined) throw new Error(`No cell ${id}.`);
    return this.at(cell.sheet, `${columnLetters(cell.column)}${cell.line}`, edit, type);
  }

  /** Changes the formula of a cell and leaves the cached value. */
  formula(id: string, edit: (formula: string) => string): this {
    return this.cell(id, (inside) =>
      inside.replace(/<f>(.*?)<\/f>/, (_, formula: string) => `<f>${edit(formula)}</f>`),
    );
  }
}

export const inlineText = (text: string): string => `<is><t>${text}</t></is>`;
