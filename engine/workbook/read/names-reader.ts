import { isDeepStrictEqual } from "node:util";
import type { DefinedName } from "./content.js";
import { targetOf } from "./defined-names.js";
import type { Package } from "./package.js";
import {
  longestDefinition,
  plainNamesIn,
  type WrittenName,
  type WrittenNames,
  writtenNamesIn,
} from "./plain-names.js";
import { damaged } from "./refused.js";
import { booleanOf, unescaped } from "./text.js";
import type { Attributes, Bulk, Cut } from "./xml.js";

export interface ReadNames {
  readonly names: readonly DefinedName[];
  /** Those of them that hold for the whole workbook: one list for all workbooks that have the same. */
  readonly common: readonly DefinedName[];
}

/** Hears of the defined names of a workbook part one by one, or takes them at a go where workbooks before had the same. */
export class NamesReader {
  /** For a single workbook it is not worth the while. */
  readonly bulk: Bulk | undefined;
  readonly #written: WrittenName[] = [];
  #common: CommonNames | undefined;
  #attributes: Attributes = {};
  #text = "";

  constructor(
    private readonly from: Package,
    private readonly part: string,
  ) {
    this.bulk = from.kept && {
      path: "workbook/definedNames",
      cut: (text) => this.#cut(text),
    };
  }

  open(attributes: Attributes): void {
    this.from.budget.spend("names", 1, "The workbook");
    this.#attributes = attributes;
    this.#text = "";
  }

  text(piece: string): void {
    this.#text += piece;
    if (this.#text.length <= longestDefinition) return;
    throw damaged(`A defined name of the workbook is over ${longestDefinition} characters long`);
  }

  close(): void {
    const { name, hidden, localSheetId } = this.#attributes;
    if (name === undefined) throw damaged("A defined name of the workbook has no name");
    this.#written.push({
      ...{ name: name.value, text: this.#text },
      ...{ hidden: hidden?.value, localSheetId: localSheetId?.value },
    });
  }

  /** All of them, with what they point to among the sheets. Throws WorkbookRefused for one that comes twice. */
  settled(sheets: readonly { readonly name: string }[]): ReadNames {
    const names = namesOf(this.#written, sheets);
    if (this.#common === undefined) {
      return { names, common: names.filter(({ scope }) => scope === undefined) };
    }
    const common = resolved(this.#common, sheets);
    return { names: [...common, ...names], common };
  }

  #cut(whole: string): Cut | undefined {
    const plain = plainNamesIn(whole);
    if (plain === undefined) return undefined;
    const { kept, budget } = this.from;
    const place = `names of ${this.part}`;
    const known = kept?.find<CommonNames>(place, plain.common);
    const read = known ?? writtenNamesIn(plain.common);
    const scoped = writtenNamesIn(plain.scoped);
    if (read === undefined || scoped === undefined) return undefined;
    const tell = () => {
      budget.spend("names", read.written.length + scoped.written.length, "The workbook");
      this.#written.push(...scoped.written);
      this.#common = known ?? kept?.keep(place, plain.common, { ...read });
    };
    return { outside: plain.outside, markup: read.markup + scoped.markup, tell };
  }
}

/** Names that workbooks have in common, with what they point to among the sheets of the last of them. */
interface CommonNames extends WrittenNames {
  resolved?: { readonly sheets: string; readonly names: readonly DefinedName[] };
}

function resolved(
  common: CommonNames,
  sheets: readonly { readonly name: string }[],
): readonly DefinedName[] {
  const among = JSON.stringify(sheets.map(({ name }) => name));
  if (common.resolved?.sheets !== among) {
    common.resolved = { sheets: among, names: namesOf(common.written, sheets) };
  }
  return common.resolved.names;
}

function namesOf(
  written: readonly WrittenName[],
  sheets: readonly { readonly name: string }[],
): DefinedName[] {
  const sheetNames = new Map(sheets.map(({ name }) => [name.toLowerCase(), name]));
  if (sheetNames.size < sheets.length)
    throw damaged("Two sheets of the workbook have the same name");
  const seen = new Map<string, DefinedName>();
  return written.flatMap(({ localSheetId, ...said }) => {
    const [name, text] = [unescaped(said.name), unescaped(said.text)];
    const hidden = booleanOf(said.hidden) ?? false;
    const scope = localSheetId === undefined ? undefined : sheets[Number(localSheetId)]?.name;
    if (localSheetId !== undefined && scope === undefined) {
      throw damaged(
        `The defined name ${name} belongs to sheet ${localSheetId} of ${sheets.length}`,
      );
    }
    const key = `${localSheetId ?? ""}!${name.toLowerCase()}`;
    const defined = { name, text, target: targetOf(text, sheetNames), scope, hidden };
    const before = seen.get(key);
    if (before !== undefined && isSameArea(before, defined)) return [];
    if (before !== undefined && !keptTwice.test(name)) {
      throw damaged(`The defined name ${name} comes twice`);
    }
    seen.set(key, defined);
    return [defined];
  });
}

/** Where somebody set another print area in LibreOffice, it writes the new one and, after it, the old one. */
const keptTwice = /^_xlnm\.print_(area|titles)$/i;

/** LibreOffice writes a print area of one cell twice, as `$O$1` and as `$O$1:$O$1`. */
const isSameArea = (one: DefinedName, other: DefinedName): boolean =>
  /^_xlnm\./i.test(one.name) &&
  one.target !== undefined &&
  isDeepStrictEqual(one.target, other.target);
