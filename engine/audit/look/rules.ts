import { isDeepStrictEqual } from "node:util";
import { addressOf, type Position, positionOf } from "../../workbook/read/address.js";
import { type Area, areasOf } from "../../workbook/read/area.js";
import type { Rule, RuleLook, SheetLook, WorkbookLook } from "../../workbook/read/look/content.js";
import { type CutFormula, cutFormula } from "../../workbook/read/shift.js";
import type { Finding } from "../finding.js";
import { grouped, short } from "../subject.js";
import { type LookPair, lookFinding } from "./compared.js";
import { printedForm, showsNothing } from "./format/code.js";
import { misreading, type Reading, readOtherwise } from "./format/reading.js";
import { legible } from "./legible.js";

/** What a rule does to a cell: the key tells alike ones, `hides` and `rewrites` what matters of it. */
interface Effect {
  readonly key: string;
  /** When it does it, in normal form: two of one condition are a rule before and after its look was changed. */
  readonly condition: string;
  readonly hides: boolean;
  readonly rewrites: boolean;
  /** The number format that it gives, where it gives one. */
  readonly format: string | undefined;
  readonly said: string;
}

/** A forged sheet must not take the time: what comes after is not looked at, which is told. */
const mostSteps = 400_000;
const mostOfAreas = 20_000;

/** Rules of conditional format put in or taken out, cell by cell of those that hold something. */
export function checkRules(pair: LookPair): Finding[] {
  const { found, fresh, map } = pair;
  if (map.still && areSameRules(pair)) return [];
  const homes = new Map<string, Position>();
  for (const address of fresh.cells.keys()) {
    const at = map.addressOf(address);
    if (at !== undefined) homes.set(at, positionOf(address) as Position);
  }
  const [now, whole] = effects(pair.now.rules, [...homes.keys()], (effect, rule, at) =>
    effect(rule, at, pair.nowBook.styles.rules, map.still ? undefined : (to) => map.from(to)),
  );
  const [then] = effects(pair.then.rules, [...homes.values()].map(addressOf), (effect, rule, at) =>
    effect(rule, at, pair.thenBook.styles.rules, map.still ? undefined : (to) => to),
  );
  const added = new Map<string, { effect: Effect; cells: string[] }>();
  const gone = new Map<string, { effect: Effect; cells: string[] }>();
  const rewritten = new Map<string, { effect: Effect; cells: string[] }>();
  for (const [address, home] of homes) {
    const here = now.get(address) ?? new Map<string, Effect>();
    const there = then.get(addressOf(home)) ?? new Map<string, Effect>();
    const came = [...here].flatMap(([key, effect]) => (there.has(key) ? [] : [effect]));
    const went = [...there].flatMap(([key, effect]) => (here.has(key) ? [] : [effect]));
    for (const effect of came) {
      note(went.some((one) => sameCondition(one, effect)) ? rewritten : added, effect, address);
    }
    for (const effect of went) {
      if (!came.some((one) => sameCondition(one, effect))) note(gone, effect, address);
    }
  }
  const lostRules = [...gone.values()].map(({ effect, cells }) =>
    lookFinding(
      placesOf(found.name, cells),
      `the rule ${effect.said} is gone`,
      effect.hides ? "rows that are not used out of sight" : "a warning that stands out",
      losesRules.test(pair.nowBook.application) ? lost : {},
    ),
  );
  const own = [...added.values()].map(({ effect, cells }) =>
    addedFinding(found.name, effect, cells, readBy(effect, cells, pair)),
  );
  const changed = [...rewritten.values()].map(({ effect, cells }) =>
    rewrittenFinding(found.name, effect, cells),
  );
  const tooMany = lookFinding(
    `sheet ${found.name}`,
    `${pair.now.rules.length} rules of conditional format, on more cells than are looked at`,
    `${pair.then.rules.length} rules`,
  );
  const isMild = ({ grade }: Finding) => grade === "to know";
  return [
    ...(whole ? [] : [tooMany]),
    ...grouped(
      own.filter((one) => !isMild(one)),
      20,
    ),
    ...grouped(own.filter(isMild), 3),
    ...grouped(lostRules, 3),
    ...changed,
  ];
}

/** The same rules in the same order, with the same looks, do the same. */
function areSameRules({ now, then, nowBook, thenBook }: LookPair): boolean {
  const told = ({ rules }: SheetLook, { styles }: WorkbookLook) =>
    rules.map((rule) => ({ ...rule, look: styles.rules[rule.look ?? -1] }));
  return isDeepStrictEqual(told(now, nowBook), told(then, thenBook));
}

const sameCondition = (a: Effect, b: Effect): boolean => a.condition === b.condition;

/** A rule with its condition as written, which looks otherwise. */
function rewrittenFinding(sheet: string, { hides, said }: Effect, cells: string[]): Finding {
  return {
    ...lookFinding(
      placesOf(sheet, cells),
      `the rule ${said} ${hides ? "hides the text in another way" : "looks otherwise"}`,
      "the look that the rule was written with",
    ),
    code: "rule-rewritten",
  };
}

/**
 * The findings of a whole workbook with its rewritten rules as one, which comes last: libraries write all of
 * them anew when they save.
 */
export function rewrittenAsOne(findings: readonly Finding[]): Finding[] {
  const changed = findings.filter(({ code }) => code === "rule-rewritten");
  if (changed.length < 4) return [...findings];
  const [{ name: _, ...first }] = changed as [Finding, ...Finding[]];
  return [
    ...findings.filter(({ code }) => code !== "rule-rewritten"),
    {
      ...first,
      names: changed.map(({ where }) => where),
      where: `${changed.length} rules, the first at ${first.where}`,
      found: `rules of conditional format were written anew, as libraries do on saving: ${first.found}`,
      expected: "rules that look as they were written",
      advice: "Take the bid anew from the job record, or look that nothing is out of sight.",
    },
  ];
}

/** Gnumeric keeps one rule where several lie on one another. */
const losesRules = /gnumeric/i;
const lost = {
  grade: "to know",
  advice: "Nothing: Gnumeric, which saved the workbook, keeps one rule where two lie on a cell.",
} as const;

function note(
  list: Map<string, { effect: Effect; cells: string[] }>,
  effect: Effect,
  cell: string,
): void {
  const known = list.get(effect.key);
  if (known === undefined) list.set(effect.key, { effect, cells: [cell] });
  else known.cells.push(cell);
}

/** What the first cell that is read otherwise by a rule's number format shows by it, and what it holds. */
function readBy(
  { format, hides }: Effect,
  cells: readonly string[],
  { shown, thenBook }: LookPair,
): Reading | undefined {
  if (format === undefined || hides) return undefined;
  const wanted = new Set(cells);
  for (const { address, now, then } of shown) {
    const { value } = now;
    if (!wanted.has(address) || value === null || typeof value === "object") continue;
    const own = thenBook.styles.cells[then.style ?? 0]?.format ?? "General";
    const read = readOtherwise(value, format, own);
    if (read !== undefined) return read;
  }
  return undefined;
}

function addedFinding(
  sheet: string,
  { hides, rewrites, said }: Effect,
  cells: string[],
  read: Reading | undefined,
): Finding {
  const where = placesOf(sheet, cells);
  if (hides) return lookFinding(where, `a rule that hides the text: ${said}`, "no such rule");
  if (read !== undefined) {
    return lookFinding(
      where,
      `a rule by which a cell ${misreading(read)}: ${said}`,
      "no such rule",
      {
        grade: "wrong",
        advice: "Take the rule out: where it holds, another figure is read than the cell holds.",
      },
    );
  }
  if (rewrites) {
    return lookFinding(where, `a rule that shows figures otherwise: ${said}`, "no such rule");
  }
  return lookFinding(where, `a rule of the office's own: ${said}`, "no such rule", {
    grade: "to know",
    advice: "Nothing: it colours cells, and all can be read.",
  });
}

const placesOf = (sheet: string, cells: readonly string[]): string =>
  `${sheet}!${cells.slice(0, 6).join(", ")}${cells.length > 6 ? `, and ${cells.length - 6} more` : ""}`;

type Back = ((at: Position) => Position | undefined) | undefined;
type EffectOf = (rule: CutRule, at: Position, looks: readonly RuleLook[], back: Back) => Effect;

/** The effects on each cell of a list, by address, and whether all rules were looked at. */
function effects(
  rules: readonly Rule[],
  addresses: readonly string[],
  of: (effect: EffectOf, rule: CutRule, at: Position) => Effect,
): [Map<string, Map<string, Effect>>, boolean] {
  const wanted = new Map(addresses.map((one) => [one, positionOf(one) as Position]));
  const found = new Map<string, Map<string, Effect>>();
  let steps = 0;
  for (const rule of rules) {
    const cut = cutRule(rule);
    for (const { from, to } of cut.areas) {
      const size = (to.row - from.row + 1) * (to.column - from.column + 1);
      steps += Math.min(size, wanted.size);
      if (steps > mostSteps) return [found, false];
      for (const [address, at] of size <= wanted.size ? cellsOf(from, to, wanted) : wanted) {
        if (at.row < from.row || at.row > to.row) continue;
        if (at.column < from.column || at.column > to.column) continue;
        const effect = of(effectOf, cut, at);
        const own = found.get(address) ?? new Map<string, Effect>();
        found.set(address, own.set(effect.key, effect));
      }
    }
  }
  return [found, rules.every(({ areas }) => areas.length <= mostOfAreas)];
}

function* cellsOf(
  from: Position,
  to: Position,
  wanted: ReadonlyMap<string, Position>,
): Generator<[string, Position]> {
  for (let row = from.row; row <= to.row; row++) {
    for (let column = from.column; column <= to.column; column++) {
      const at = wanted.get(addressOf({ row, column }));
      if (at !== undefined) yield [addressOf(at), at];
    }
  }
}

/** A rule with its areas and formulas taken apart, and its effect where that is one for all cells. */
interface CutRule {
  readonly rule: Rule;
  readonly areas: readonly Area[];
  readonly formulas: readonly CutFormula[];
  same?: Effect;
}

function cutRule(rule: Rule): CutRule {
  const areas = areasOf(rule.areas.slice(0, mostOfAreas));
  return { rule, areas, formulas: rule.formulas.map(cutFormula) };
}

/** Kinds that programs make of a formula when they see through it. */
const byFormula =
  /^(expression|beginsWith|endsWith|containsText|notContainsText|containsBlanks|notContainsBlanks|containsErrors|notContainsErrors|timePeriod)$/;
const drawn = /^(iconSet|dataBar)$/;

function effectOf(cut: CutRule, at: Position, looks: readonly RuleLook[], back: Back): Effect {
  if (back === undefined && cut.same !== undefined) return cut.same;
  const { rule, formulas } = cut;
  const { format, ink, fill, struck } = looks[rule.look ?? -1] ?? {};
  const kind =
    byFormula.test(rule.kind) && rule.formulas.length > 0
      ? "when"
      : `${rule.kind} ${rule.operator}`.trim();
  const base = cut.areas[0]?.from ?? at;
  const terms = formulas.map((one) => relative(one, base, at, back)).join(", ");
  const shows = format === undefined ? "" : printedForm(format, false);
  const hides =
    (format !== undefined && showsNothing(format, false)) ||
    (ink !== undefined && !legible(ink, fill)) ||
    (fill !== undefined && !legible(ink, fill)) ||
    (rule.shades?.some((one) => !legible(ink, one)) ?? false);
  const effect: Effect = {
    key: [kind, terms, shows, ink, fill, struck, ...(rule.shades ?? [])].join("|"),
    condition: `${kind}|${terms}`,
    hides,
    rewrites: format !== undefined || struck === true || drawn.test(rule.kind),
    format,
    said: short(`${kind} ${rule.formulas.join(", ")}`, 100),
  };
  if (back === undefined) cut.same = effect;
  return effect;
}

/** A formula with its relative references told by their distance, after `back` where lines were moved. */
function relative(cut: CutFormula, base: Position, at: Position, back: Back): string {
  const home = back?.(at) ?? at;
  return cut
    .map((piece) => {
      if (typeof piece === "string") return spelled(piece);
      const { row, column } = piece;
      const there = {
        row: row === undefined ? 1 : row.absolute ? row.value : row.value - base.row + at.row,
        column:
          column === undefined
            ? 1
            : column.absolute
              ? column.value
              : column.value - base.column + at.column,
      };
      const to = back?.(there) ?? there;
      const part = (one: { absolute: boolean } | undefined, value: number, own: number) =>
        one === undefined ? "" : one.absolute ? `$${value}` : `[${value - own}]`;
      return `R${part(row, to.row, home.row)}C${part(column, to.column, home.column)}`;
    })
    .join("");
}

/** Letter case, spaces, quotes around sheets and the spelling of TRUE do not count outside texts. */
const spelled = (text: string): string =>
  text
    .split(/("[^"]*")/)
    .map((part, i) =>
      i % 2 === 1
        ? part
        : part
            .replace(/[\s']+/g, "")
            .toUpperCase()
            .replace(/\bTRUE\b(\(\))?/g, "1")
            .replace(/\bFALSE\b(\(\))?/g, "0"),
    )
    .join("");
