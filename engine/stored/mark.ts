import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import { fileURLToPath } from "node:url";
import type { Template } from "../template/template.js";
import type { UnitSystem } from "../units/quantity.js";

const engine = fileURLToPath(new URL("..", import.meta.url));

/** The rooms whose code makes a model, its functions and its validator; built, they stand in what all commands share. */
const rooms = ["units", "formula", "template", "evaluate", "job", "stored", "shared"];

/**
 * The mark of what a model is made from: all that the template declares, and the code that compiles it.
 * A model kept under another mark is stale. Undefined for a template that holds what cannot be
 * told from its declarations.
 */
export function markOf(template: Template, system: UnitSystem): string | undefined {
  const declared = declaredText(template);
  if (declared === undefined) return undefined;
  return createHash("sha256").update(engineMark()).update(system).update(declared).digest("hex");
}

/** Declarations are no code: the package leaves most of them out. */
const code = /(?<!\.d)\.[jt]s$/;

let known: string | undefined;

function engineMark(): string {
  known ??= digestOf(engine, rooms);
  return known;
}

/** A digest of the code in rooms of a folder: some milliseconds, and no edit of a built file goes unseen. */
export function digestOf(folder: string, within: readonly string[]): string {
  const hash = createHash("sha256");
  for (const room of within.filter((name) => existsSync(join(folder, name)))) {
    const files = readdirSync(join(folder, room), { recursive: true, encoding: "utf8" });
    for (const file of files.filter((name) => code.test(name)).sort()) {
      const text = readFileSync(join(folder, room, file));
      hash.update(`${room}/${file.replaceAll(sep, "/")} ${text.length} `).update(text);
    }
  }
  return hash.digest("hex");
}

/**
 * All that the compiler reads of a template, as one text; formulas by row are asked for each row of their table.
 * What commands read of the template itself (roles, the office book's own tables) stays out.
 */
export function declaredText(template: Template): string | undefined {
  const { office, roles, example, sharesBook, ...compiled } = template;
  const teller = new Teller();
  return teller.tell(compiled) ? teller.told.join("\n") : undefined;
}

class Teller {
  readonly told: string[] = [];
  /** By rows of the table: the same formulas by row say something else in a table of other rows. */
  private readonly seen = new Map<number, Map<object, number>>();
  /** Of the table that is being told; a cell outside of tables counts as row 1. */
  private rows = 1;

  /** Is there nothing in it that cannot be told? */
  tell(value: unknown): boolean {
    if (typeof value === "function") return false;
    if (typeof value === "object" && value !== null) return this.parts(value);
    // with its length, since a text may hold a line feed
    this.told.push(typeof value === "string" ? `${value.length} ${value}` : said(value));
    return true;
  }

  private parts(value: object): boolean {
    const outside = this.rows;
    if ("rows" in value && typeof value.rows === "number") this.rows = value.rows;
    const seen = this.seen.get(this.rows) ?? new Map<object, number>();
    this.seen.set(this.rows, seen);
    const before = seen.get(value);
    if (before === undefined) seen.set(value, seen.size);
    else this.told.push(`#${before}`);
    const sound = before !== undefined || this.entries(value as Record<string, unknown>);
    this.rows = outside;
    return sound;
  }

  private entries(value: Record<string, unknown>): boolean {
    this.told.push(Array.isArray(value) ? "[" : "{");
    for (const key of Object.keys(value)) {
      // the tree of a named formula, which its text tells
      if (key === "body") continue;
      const part = value[key];
      this.told.push(key);
      const isByRow = key === "formula" && typeof part === "function";
      if (!(isByRow ? this.byRow(part as RowFormula) : this.tell(part))) return false;
    }
    this.told.push("}");
    return true;
  }

  private byRow(formula: RowFormula): boolean {
    for (let row = 1; row <= this.rows; row++) this.tell(formula(row));
    return true;
  }
}

type RowFormula = (row: number) => string;

const said = (value: unknown): string => (Object.is(value, -0) ? "-0" : String(value));
