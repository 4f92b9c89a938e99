import { strFromU8, strToU8 } from "fflate";
import { Budget } from "../read/limits.js";
import { unpack } from "../read/unpack.js";
import { readDirectory, type ZipEntry } from "../read/zip-directory.js";
import { type Packed, packedNow, zipOf } from "./zip.js";

const deflate = 8;

/**
 * The parts of a workbook, to be looked at and changed. A part is unpacked when it is asked for, and what nobody
 * changes stays packed as it was. Throws WorkbookRefused for what is no sound zip archive.
 */
export class Archive {
  readonly #bytes: Uint8Array;
  readonly #budget = new Budget();
  readonly #entries: ReadonlyMap<string, ZipEntry>;
  readonly #changed = new Map<string, Uint8Array>();
  readonly #texts = new Map<string, string>();

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
    const entries = readDirectory(bytes, this.#budget);
    // exceljs lists folders too
    const files = entries.filter(({ name }) => !name.endsWith("/"));
    this.#entries = new Map(files.map((entry) => [entry.name, entry]));
  }

  /** The names of the parts: those of the archive in its order, then the new ones. */
  get names(): string[] {
    const added = [...this.#changed.keys()].filter((name) => !this.#entries.has(name));
    return [...this.#entries.keys(), ...added];
  }

  has(name: string): boolean {
    return this.#changed.has(name) || this.#entries.has(name);
  }

  /** A part as text. Throws where there is none. */
  text(name: string): string {
    const changed = this.#changed.get(name);
    if (changed !== undefined) return strFromU8(changed);
    const entry = this.#entries.get(name);
    if (entry === undefined) throw new Error(`The workbook has no part ${name}.`);
    const known = this.#texts.get(name) ?? strFromU8(unpack(this.#bytes, entry, this.#budget));
    this.#texts.set(name, known);
    return known;
  }

  put(name: string, part: string | Uint8Array): void {
    this.#changed.set(name, typeof part === "string" ? strToU8(part) : part);
  }

  /** The archive with its changes. The same changes of the same archive give the same bytes. */
  packed(): Uint8Array {
    return zipOf(this.names.map((name) => this.#packed(name)));
  }

  #packed(name: string): Packed {
    const changed = this.#changed.get(name);
    if (changed !== undefined) return packedNow(name, changed, 6);
    const entry = this.#entries.get(name) as ZipEntry;
    const { start, packed, crc, unpacked } = entry;
    if (entry.method !== deflate) {
      return packedNow(name, unpack(this.#bytes, entry, this.#budget), 6);
    }
    return { name, deflated: this.#bytes.subarray(start, start + packed), crc, size: unpacked };
  }
}
