import { createHash } from "node:crypto";
import { print } from "../formula/print.js";
import type { Tree } from "../formula/tree.js";
import { CellError, type Value } from "../formula/value.js";
import { canonicalJson } from "../job/trail/canonical.js";
import type { InputValue } from "../template/declare.js";
import type { Model } from "../template/model.js";
import { spokenName } from "../template/printed.js";

/** What a seal stands over, one by one, so that it can be told which of it was changed. */
export const sectionNames = ["template", "inputs", "prices", "values", "pages"] as const;
export type SectionName = (typeof sectionNames)[number];

/** SHA-256 of each section, in base64url. */
export type Sections = Readonly<Record<SectionName, string>>;

/** What a bid holds, with all left out that programs change by saving. */
export interface SealedContent {
  /** The job and where its inputs come from: number, words about it, last hash of the trail. */
  readonly job: Readonly<Record<string, string | undefined>>;
  /** By id; those that are blank left out. */
  readonly inputs: ReadonlyMap<string, InputValue>;
  /** The price book's name and day. */
  readonly book: Readonly<Record<string, string | undefined>>;
  readonly prices: ReadonlyMap<string, InputValue>;
  /** Of every cell of the template, by its index. */
  readonly values: readonly Value[];
  /** The lines of each page that is handed out, in reading order. */
  readonly pages: Readonly<Record<string, readonly (readonly Value[])[]>>;
}

/** The digests of a bid made with a template. Equal bids have equal ones, whichever program saved them. */
export function sectionsOf(model: Model, content: SealedContent): Sections {
  const { job, inputs, book, prices, values, pages } = content;
  const plain = (given: ReadonlyMap<string, InputValue>) => Object.fromEntries(given);
  const lines = Object.entries(pages).map(
    ([name, page]) => [name, page.map((line) => line.map(sealedValue))] as const,
  );
  return {
    template: templateDigest(model),
    inputs: digest({ job, inputs: plain(inputs) }),
    prices: digest({ book, prices: plain(prices) }),
    values: digest(values.map(sealedValue)),
    pages: digest(Object.fromEntries(lines)),
  };
}

const digest = (value: unknown): string =>
  createHash("sha256").update(canonicalJson(value)).digest("base64url");

const known = new WeakMap<Model, string>();

/** Name, version and units of a template with all its formulas and figures. */
function templateDigest(model: Model): string {
  const made = known.get(model) ?? digest(templateContent(model));
  known.set(model, made);
  return made;
}

function templateContent({ template, system, cells }: Model): unknown {
  const printed = new Map<Tree, string>();
  const formula = (tree: Tree): string => {
    const text =
      printed.get(tree) ??
      print(tree, { prefixed: false, exponent: "E", quotes: "doubled", reference: spokenName });
    printed.set(tree, text);
    return text;
  };
  const { name, version } = template;
  const held = cells.map(({ id, native, fixed }) => [
    id,
    native === undefined ? (fixed ?? null) : `=${formula(native)}`,
  ]);
  return { name, version, system, cells: held };
}

/**
 * A value as it is sealed: numbers in steps of a billionth of their size, so that the last bits, in which
 * processors and versions of a program differ, do not count.
 */
function sealedValue(value: Value): unknown {
  if (value instanceof CellError) return { error: value.code };
  if (typeof value === "string") return value.trim() || null;
  if (typeof value !== "number" || !Number.isFinite(value)) return value;
  const size = Math.max(1, 10 ** Math.floor(Math.log10(Math.abs(value) || 1)));
  return Number(((Math.floor((value / size) * 1e8 + offset) / 1e8) * size).toPrecision(12));
}

/** Figures that people write end in few digits: the steps' edges lie far from all of them. */
const offset = 0.3183;
