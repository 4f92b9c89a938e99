import { readContentTypes } from "./content-types.js";
import { notWorkbook, refuseDisguise, saveAsXlsx } from "./disguise.js";
import type { KeptParts } from "./kept-parts.js";
import { Budget, type ReadLimits } from "./limits.js";
import { damaged } from "./refused.js";
import { type Relationship, readRelationships, relationshipsPartOf } from "./relationships.js";
import { unpack } from "./unpack.js";
import { type Parts, walkXml, type XmlVisitor } from "./xml.js";
import { readDirectory, type ZipEntry } from "./zip-directory.js";

/** An opened package (ISO/IEC 29500-2): its parts by name, whatever their case, unpacked on demand. */
export class Package implements Parts {
  readonly budget: Budget;
  readonly partNames: readonly string[];
  readonly #bytes: Uint8Array;
  readonly #entries: ReadonlyMap<string, ZipEntry>;
  readonly #contentType: (part: string) => string | undefined;

  /** @param kept what was read of other workbooks */
  constructor(
    bytes: Uint8Array,
    limits: Partial<ReadLimits> = {},
    readonly kept?: KeptParts,
  ) {
    this.budget = new Budget(limits);
    this.budget.check("fileBytes", bytes.length, "The workbook");
    refuseDisguise(bytes);
    const entries = readDirectory(bytes, this.budget);
    this.#bytes = bytes;
    this.partNames = entries.map((entry) => entry.name).filter((name) => !name.endsWith("/"));
    this.#entries = new Map(entries.map((entry) => [entry.name.toLowerCase(), entry]));
    if (!this.has("[Content_Types].xml") || !this.has("_rels/.rels")) {
      throw notWorkbook("The file is a zip archive, but not an .xlsx workbook", saveAsXlsx);
    }
    this.#contentType = readContentTypes(this);
  }

  has(part: string): boolean {
    return this.#entries.has(part.toLowerCase());
  }

  contentType(part: string): string | undefined {
    return this.#contentType(part);
  }

  /** Unpacks a part and reads it through. */
  walk(part: string, visitor: XmlVisitor): void {
    const entry = this.#entries.get(part.toLowerCase());
    if (entry === undefined) throw damaged(`Part ${part} of the workbook is missing`);
    walkXml(unpack(this.#bytes, entry, this.budget), part, this.budget, visitor, this.kept);
  }

  /** The text of a part that need not be well-formed, such as drawings of the old kind. */
  text(part: string): string {
    const entry = this.#entries.get(part.toLowerCase());
    if (entry === undefined) return "";
    return Buffer.from(unpack(this.#bytes, entry, this.budget)).toString("utf8");
  }

  /** Unpacked size of a part as the archive states it, in bytes; 0 where there is none. */
  sizeOf(part: string): number {
    return this.#entries.get(part.toLowerCase())?.unpacked ?? 0;
  }

  /** Unpacks a part as it is. */
  bytes(part: string): Uint8Array {
    const entry = this.#entries.get(part.toLowerCase());
    if (entry === undefined) throw damaged(`Part ${part} of the workbook is missing`);
    const { buffer, byteOffset, length } = unpack(this.#bytes, entry, this.budget);
    return new Uint8Array(buffer, byteOffset, length);
  }

  /** Where a part points to; "" stands for the package itself. */
  relationshipsOf(part: string): readonly Relationship[] {
    return this.has(relationshipsPartOf(part)) ? readRelationships(this, part) : [];
  }
}
