import { booleanOf, unescaped } from "../text.js";
import type { Attributes } from "../xml.js";
import type { ColumnLook, RowLook, Rule, SheetLook, TypingRule } from "./content.js";

/** A forged sheet must not take the memory: what comes after so many is not looked at, which is told. */
const most = { rows: 20000, columns: 1000, merges: 20000, rules: 2000, typing: 5000, breaks: 2000 };

const settingsOf =
  /^worksheet\/(sheetViews\/sheetView(\/pane)?|pageMargins|pageSetup|sheetPr(\/pageSetUpPr)?|sheetProtection|headerFooter)$/;
const rowPath = "worksheet/sheetData/row";
const cellsPath = "worksheet/sheetData/";
const rulePath = "worksheet/conditionalFormatting/cfRule";
const typingPath = "worksheet/dataValidations/dataValidation";
const marginPath = /^worksheet\/headerFooter\/(\w+)$/;

/** Extensions of a sheet by the identifier that programs know them by. */
const extensions: Readonly<Record<string, string>> = {
  "{78C0D931-6437-407D-A8EE-F0AAD7539E65}": "x14 rules",
  "{05C60535-1F16-4FD2-B633-F4F36F0B64E0}": "sparklines",
};

/** Elements of a sheet that bring something else over or into it. */
const further = new Set([
  "controls",
  "oleObjects",
  "picture",
  "legacyDrawingHF",
  "drawingHF",
  "AlternateContent",
]);

/** Listens while a worksheet is read, and keeps what decides how its cells appear. */
export class SheetListener {
  readonly #rows = new Map<number, RowLook>();
  readonly #columns: ColumnLook[] = [];
  readonly #merges: string[] = [];
  readonly #rules: (Rule & { formulas: string[] })[] = [];
  readonly #typing: (TypingRule & { formulas: string[] })[] = [];
  readonly #breaks = { rows: [] as number[], columns: [] as number[] };
  readonly #margins = new Map<string, string>();
  readonly #settings = new Map<string, string>();
  readonly #parts = new Set<string>();
  #defaultHeight: number | undefined;
  #hidesRows = false;
  #row = 0;
  #areas = "";

  open(path: string, attributes: Attributes): void {
    if (path === rowPath) this.#openRow(attributes);
    // most of a sheet is its cells, of which nothing is kept here
    else if (path.startsWith(cellsPath)) return;
    else if (path === "worksheet/cols/col") this.#openColumn(attributes);
    else if (path === "worksheet/mergeCells/mergeCell") {
      if (this.#room("merges", this.#merges.length)) this.#merges.push(attributes.ref?.value ?? "");
    } else if (path === "worksheet/conditionalFormatting") {
      this.#areas = attributes.sqref?.value ?? "";
    } else if (path === rulePath) this.#openRule(attributes);
    else if (path === `${rulePath}/formula`) this.#rules.at(-1)?.formulas.push("");
    else if (path === `${rulePath}/colorScale/color`) this.#shade(attributes);
    else if (path === typingPath) this.#openTyping(attributes);
    else if (path.startsWith(`${typingPath}/formula`)) this.#typing.at(-1)?.formulas.push("");
    else if (path === "worksheet/rowBreaks/brk") this.#openBreak("rows", attributes);
    else if (path === "worksheet/colBreaks/brk") this.#openBreak("columns", attributes);
    else if (path === "worksheet/sheetFormatPr") {
      this.#defaultHeight = Number(attributes.defaultRowHeight?.value ?? Number.NaN);
      this.#hidesRows = booleanOf(attributes.zeroHeight?.value) ?? false;
    } else if (path === "worksheet/extLst/ext") {
      const known = extensions[(attributes.uri?.value ?? "").toUpperCase()];
      if (known !== undefined) this.#parts.add(known);
    } else {
      const name = path.slice("worksheet/".length);
      if (further.has(name)) this.#parts.add(name);
      if (settingsOf.test(path)) this.#keep(name, attributes);
    }
  }

  text(path: string, piece: string): void {
    if (path === `${rulePath}/formula`) {
      const formulas = this.#rules.at(-1)?.formulas;
      if (formulas !== undefined && formulas.length > 0) {
        formulas[formulas.length - 1] = ((formulas.at(-1) ?? "") + piece).slice(0, 16384);
      }
    }
    if (path.startsWith(`${typingPath}/formula`)) {
      const formulas = this.#typing.at(-1)?.formulas;
      if (formulas !== undefined && formulas.length > 0) {
        formulas[formulas.length - 1] = ((formulas.at(-1) ?? "") + piece).slice(0, 16384);
      }
    }
    const place = marginPath.exec(path)?.[1];
    if (place !== undefined) {
      this.#margins.set(place, ((this.#margins.get(place) ?? "") + piece).slice(0, 2000));
    }
  }

  /** What was heard; drawings and notes stand in parts of their own. */
  heard(): Omit<SheetLook, "drawn" | "charts" | "notes" | "openNotes"> {
    const height = this.#defaultHeight;
    return {
      rows: this.#rows,
      columns: this.#columns,
      ...(height === undefined || Number.isNaN(height) ? {} : { defaultHeight: height }),
      hidesRows: this.#hidesRows,
      merges: this.#merges,
      rules: this.#rules.map((rule) => ({ ...rule, formulas: rule.formulas.map(unescaped) })),
      typing: this.#typing.map((rule) => ({ ...rule, formulas: rule.formulas.map(unescaped) })),
      breaks: this.#breaks,
      margins: this.#margins,
      settings: this.#settings,
      parts: [...this.#parts],
    };
  }

  #openRow({ r, ht, hidden }: Attributes): void {
    this.#row = r === undefined ? this.#row + 1 : Number(r.value);
    const unseen = booleanOf(hidden?.value) ?? false;
    if ((ht === undefined && !unseen) || !this.#room("rows", this.#rows.size)) return;
    const height = ht === undefined ? {} : { height: Number(ht.value) };
    this.#rows.set(this.#row, { ...height, hidden: unseen });
  }

  #openColumn({ min, max, width, hidden }: Attributes): void {
    if (!this.#room("columns", this.#columns.length)) return;
    this.#columns.push({
      from: Number(min?.value),
      to: Number(max?.value),
      ...(width === undefined ? {} : { width: Number(width.value) }),
      hidden: booleanOf(hidden?.value) ?? false,
    });
  }

  #openRule({ type, operator, dxfId }: Attributes): void {
    if (!this.#room("rules", this.#rules.length)) return;
    this.#rules.push({
      areas: this.#areas,
      kind: type?.value ?? "",
      operator: operator?.value ?? "",
      formulas: [],
      look: dxfId === undefined ? undefined : Number(dxfId.value),
    });
  }

  /** By its number or theme nobody knows here which: what a rule shades by these counts as black. */
  #shade({ rgb }: Attributes): void {
    const last = this.#rules.at(-1);
    if (last === undefined || (last.shades?.length ?? 0) > 3) return;
    const color = rgb?.value.slice(-6).toUpperCase() ?? "000000";
    this.#rules[this.#rules.length - 1] = { ...last, shades: [...(last.shades ?? []), color] };
  }

  #openTyping({ sqref, type, prompt }: Attributes): void {
    if (!this.#room("typing", this.#typing.length)) return;
    const said = unescaped(prompt?.value ?? "");
    const kind = type?.value ?? "none";
    this.#typing.push({ areas: sqref?.value ?? "", kind, formulas: [], prompt: said });
  }

  #openBreak(what: "rows" | "columns", { id, man }: Attributes): void {
    if (booleanOf(man?.value) !== true || !this.#room("breaks", this.#breaks[what].length)) return;
    this.#breaks[what].push(Number(id?.value));
  }

  #keep(name: string, attributes: Attributes): void {
    const element = name.slice(name.lastIndexOf("/") + 1);
    for (const { local, value } of Object.values(attributes)) {
      this.#settings.set(`${element}.${local}`, value);
    }
  }

  #room(what: keyof typeof most, count: number): boolean {
    if (count < most[what]) return true;
    this.#parts.add("more than is looked at");
    return false;
  }
}
