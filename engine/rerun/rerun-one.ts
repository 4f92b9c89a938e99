import { fillBook, fittedTables } from "../book/fill.js";
import type { OfficeBook } from "../book/office-book.js";
import { RillbookError } from "../errors.js";
import { Cone } from "../evaluate/cone.js";
import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import { modelOf } from "../template/models.js";
import { rolesOf } from "../template/role-plan.js";
import { KeptParts } from "../workbook/read/kept-parts.js";
import { Books } from "./books.js";
import {
  againstBuilt,
  type BuiltFigures,
  builtCells,
  builtFigures,
  isBuilt,
} from "./built-figures.js";
import { type Filter, passes } from "./filter.js";
import { type Judged, judgedFault } from "./judged.js";
import { lackingCodes, someCodes, withRowsOf } from "./lacking.js";
import type { Figures, JobLine, Moved, NoJob, ResultLine } from "./lines.js";
import { lookedAt } from "./looked-at.js";
import { whatMoved } from "./moved.js";
import { isOfficeBook } from "./office-book-file.js";
import { isWorkbook, newestOf, type OldJob, readContent } from "./old-job.js";
import { oldRecord } from "./record-job.js";
import { expiredQuotes, failing, figuresOf, inError } from "./role-plan.js";
import type { Trade } from "./trade.js";
import { isLearnedWorkbook, oldWorkbook } from "./workbook-job.js";

/** What every job of a run is asked. Plain data: it goes to worker threads. */
export interface Asked {
  readonly book: OfficeBook;
  readonly versions: "own" | "newest";
  /** Serial number of the day that quotes are held against. */
  readonly day: number;
  readonly filters: readonly Filter[];
  readonly moved: boolean;
}

export interface Task {
  readonly file: string;
  /** The mark of a result that is there already: the file is done again only if it changed. */
  readonly done?: string;
  /** Calculate with both evaluators and compare. */
  readonly judged: boolean;
}

/** `fault`: the evaluators differ, and the whole run must stop. */
export type Done =
  | { readonly line: ResultLine }
  | { readonly same: true }
  | { readonly fault: string };

/** What the job gave before: its figures, the values given to the template, the checks that held. */
interface Before {
  readonly figures: JobLine["before"];
  readonly given?: readonly Value[];
  readonly passed?: ReadonlySet<string>;
  /** The office book that the record names. */
  readonly book?: OfficeBook;
}

/** Reruns one job after another: what is worked out for a template or a book is kept between them. */
export class Rerunner {
  readonly #books: Books;
  readonly #cones = new Map<Model, Cone>();
  readonly #builtCones = new Map<Model, Cone>();
  readonly #kept = new KeptParts();
  /** What the judge is to be asked about. */
  #toJudge: Judged[] = [];

  constructor(
    private readonly trade: Trade,
    private readonly asked: Asked,
  ) {
    this.#books = new Books(trade.readBook);
  }

  /**
   * Does tasks, then asks the judge about those that want it; where it comes to something else, its fault is all that
   * is given back. Never throws for what is wrong with a job: that is its result.
   */
  async run(tasks: readonly Task[]): Promise<Done[]> {
    const done: Done[] = [];
    for (const task of tasks) done.push(await this.#run(task));
    const judged = this.#toJudge;
    this.#toJudge = [];
    const fault = await judgedFault(judged);
    return fault === undefined ? done : [{ fault }];
  }

  async #run(task: Task): Promise<Done> {
    let mark: string | undefined;
    try {
      const content = await readContent(task.file);
      mark = content.mark;
      if (mark === task.done) return { same: true };
      const old = this.#old(task.file, content.bytes);
      if (typeof old === "string") {
        const { file } = task;
        return { line: { line: "skipped", file, mark, job: "", because: old } };
      }
      return await this.#done(task, old, mark);
    } catch (error) {
      const known = error instanceof Error && "code" in error && typeof error.code === "string";
      const line: ResultLine = {
        line: "error",
        file: task.file,
        ...(mark === undefined ? {} : { mark }),
        code: known ? String(error.code) : "program-fault",
        message: error instanceof Error ? error.message : String(error),
      };
      return { line };
    }
  }

  #old(file: string, bytes: Buffer): OldJob | NoJob {
    const { templates } = this.trade;
    try {
      return isWorkbook(file)
        ? oldWorkbook(bytes, file, templates, { withBook: this.asked.moved, kept: this.#kept })
        : oldRecord(bytes.toString("utf8"), file, templates);
    } catch (error) {
      if (isOfficeBook(bytes, isWorkbook(file))) return "office book";
      const { code } = error as Partial<RillbookError>;
      if (code === "template-without-roles" && isLearnedWorkbook(bytes, templates)) {
        return "learned rates";
      }
      throw error;
    }
  }

  async #done(task: Task, old: OldJob, mark: string): Promise<Done> {
    const { book, filters, day } = this.asked;
    const model = this.#modelFor(old);
    const { values: given, leftOut } = old.inputs(model, book);
    fillBook(model, given, book);
    const values = this.#calculate(model, given);
    const cone = this.#coneOf(model);
    const { cells } = cone;
    const { file } = task;
    const asked = task.judged ? this.#took(model, given) : undefined;
    if (task.judged) {
      this.#toJudge.push({ file, model, values, cells });
      if (asked !== undefined) {
        this.#toJudge.push({ file, model, values: asked, cells: this.#builtCone(model).cells });
      }
    }
    const judged = task.judged ? ({ judged: true } as const) : {};
    const { template, system: units } = model;
    const { version } = old.model.template;
    const properties = { job: old.job, file, template: template.name, units, version };
    if (!passes(filters, model, values, properties)) {
      return { line: { line: "skipped", file, mark, ...judged, job: old.job } };
    }
    const roles = rolesOf(model);
    const before = await this.#before(old);
    const missing = this.#missing(model, given, values, before);
    const all = failing(roles, values);
    const failed = all.filter(({ name }) => !missing?.checks.includes(name));
    const moved = this.#moved(old, model, before, given);
    const took = asked ?? this.#took(model, given);
    const built = took && this.#built(old, model, before, took);
    const errors = cone.holdsError(values) ? inError(model, values, cells) : undefined;
    const line: JobLine = {
      line: "job",
      file,
      mark,
      ...judged,
      source: old.source,
      job: old.job,
      template: template.name,
      version,
      by: template.version,
      units,
      before: before.figures,
      now: {
        ...figuresOf(roles, ({ index }) => values[index] as Value),
        from: "new office book",
      },
      failing: failed
        .filter(({ name }) => !(before.passed !== undefined && !before.passed.has(name)))
        .map((one) => ({ ...one, before: before.passed === undefined ? "unknown" : "passed" })),
      fails: {
        must: all.filter(({ level }) => level === "must").length,
        look: all.filter(({ level }) => level === "look").length,
      },
      ...(errors === undefined ? {} : { inError: errors }),
      expired: expiredQuotes(roles, values, day),
      ...(missing === undefined ? {} : { missing }),
      ...(leftOut.length === 0 ? {} : { leftOut }),
      ...(moved === undefined ? {} : { moved }),
      ...(built === undefined ? {} : { built }),
    };
    return { line };
  }

  /** What a rerun looks at, and the cells that filters name; papers and lists are left out. */
  #calculate(model: Model, given: readonly Value[]): Value[] {
    return this.#coneOf(model).calculate(given);
  }

  #coneOf(model: Model): Cone {
    const named = this.asked.filters.map(({ name }) => name);
    const cone = this.#cones.get(model) ?? lookedAt(model, named);
    this.#cones.set(model, cone);
    return cone;
  }

  #modelFor(old: OldJob): Model {
    if (this.asked.versions === "own") return old.model;
    const { template, system } = old.model;
    return modelOf(newestOf(template, this.trade.templates), system);
  }

  /** A workbook says what it said; a record is calculated under the book that it names. */
  async #before(old: OldJob): Promise<Before> {
    if (old.said !== undefined) {
      const { figures, passed } = old.said;
      return { figures, passed, ...(old.priced === undefined ? {} : { given: old.priced }) };
    }
    if (old.office === undefined) return { figures: { unknown: "it names no office book" } };
    const book = await this.#books.get(old.office);
    if (typeof book === "string") return { figures: { unknown: `its office book: ${book}` } };
    let given: Value[];
    try {
      given = old.inputs(old.model, book).values;
      fillBook(old.model, given, book);
    } catch (error) {
      if (!(error instanceof RillbookError)) throw error;
      return { figures: { unknown: error.message } };
    }
    const values = this.#calculate(old.model, given);
    const roles = rolesOf(old.model);
    const lacking = lackingCodes(old.model, given, book);
    if (lacking.length > 0 && this.#matters(old.model, given, values, book, this.asked.book)) {
      const unknown = `its office book ${book.name} has no row for ${someCodes(lacking)}`;
      return { figures: { unknown }, book };
    }
    const failed = new Set(failing(roles, values).map(({ name }) => name));
    const figures: Figures = {
      ...figuresOf(roles, ({ index }) => values[index] as Value),
      from: "own office book",
      book: { name: book.name, mark: book.mark },
    };
    const passed = new Set(roles.checks.map(({ name }) => name).filter((one) => !failed.has(one)));
    return { figures, passed, given, book };
  }

  /**
   * Codes that the new office book has no row for, where that makes a difference, and the checks that
   * fail only for it: those that hold with the old book's rows. Undefined where nothing is missing.
   */
  #missing(
    model: Model,
    given: readonly Value[],
    values: readonly Value[],
    { book }: Before,
  ): JobLine["missing"] {
    const codes = lackingCodes(model, given, this.asked.book);
    if (codes.length === 0) return undefined;
    if (!this.#matters(model, given, values, this.asked.book, book)) return undefined;
    const filled = book && withRowsOf(model, given, this.asked.book, book);
    if (filled === undefined) return { codes, checks: [] };
    const names = (of: readonly Value[]) => failing(rolesOf(model), of).map(({ name }) => name);
    const still = new Set(names(this.#calculate(model, filled)));
    return { codes, checks: names(values).filter((name) => !still.has(name)) };
  }

  /** Do rows that an office book lacks make a difference? Where nobody has them, a bid that does not stand says so. */
  #matters(
    model: Model,
    given: readonly Value[],
    values: readonly Value[],
    book: OfficeBook,
    other: OfficeBook | undefined,
  ): boolean {
    const filled = other && withRowsOf(model, given, book, other);
    const looked = (of: readonly Value[]) =>
      JSON.stringify([
        figuresOf(rolesOf(model), ({ index }) => of[index] as Value),
        failing(rolesOf(model), of),
      ]);
    if (filled !== undefined) return looked(this.#calculate(model, filled)) !== looked(values);
    return failing(rolesOf(model), values).some(({ level }) => level === "must");
  }

  /** Only within one version of the template: between two, formulas moved the price as well. */
  #moved(old: OldJob, model: Model, before: Before, given: readonly Value[]): Moved | undefined {
    if (!this.asked.moved || before.given === undefined || old.model !== model) return undefined;
    const price = rolesOf(model).price.name;
    return whatMoved(model, before.given, given, price, fittedTables(model, this.asked.book));
  }

  /** What a job that is told as built makes of it under the new book; undefined for any other. */
  #took(model: Model, given: readonly Value[]): Value[] | undefined {
    return isBuilt(model, given) ? this.#builtCone(model).calculate(given) : undefined;
  }

  /** Of a job that is told as built: what it came to is what it says itself, or by its own book. */
  #built(old: OldJob, model: Model, before: Before, took: readonly Value[]): JobLine["built"] {
    const said = old.said?.built ?? this.#builtBefore(old, before);
    if (typeof said === "string") return { unknown: said };
    return againstBuilt(model, took, said);
  }

  #builtBefore(old: OldJob, { figures, given }: Before): BuiltFigures | string {
    if ("unknown" in figures) return figures.unknown;
    if (given === undefined || !isBuilt(old.model, given)) return "its own version does not say it";
    const values = this.#builtCone(old.model).calculate(given);
    return builtFigures(old.model, ({ index }) => values[index] ?? null);
  }

  #builtCone(model: Model): Cone {
    const { overrun } = rolesOf(model);
    const covered = overrun === undefined ? [] : [overrun.covered.id];
    const cone = this.#builtCones.get(model) ?? new Cone(model, [...builtCells(model), ...covered]);
    this.#builtCones.set(model, cone);
    return cone;
  }
}
