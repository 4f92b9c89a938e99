import { addressOf, type Position, positionOf } from "../../workbook/read/address.js";
import { areasOf } from "../../workbook/read/area.js";
import { addCovered } from "../../workbook/read/covered.js";
import type { SheetLook, TypingRule } from "../../workbook/read/look/content.js";
import type { Finding } from "../finding.js";
import { within } from "../printed-part.js";
import { grouped, said, short } from "../subject.js";
import { type LookPair, lookFinding } from "./compared.js";

/**
 * What a person is told while typing into an input, and what the program then takes: another hint is a finding, other
 * limits or choices are a note, since the message beside the input still tells a value that breaks its rule.
 */
export function checkTyping(pair: LookPair): Finding[] {
  const { found, now, then, map } = pair;
  const was = writtenRules(then);
  const places = [...was.keys()].flatMap((home) => {
    const at = map.to(positionOf(home) ?? { row: 0, column: 0 });
    return at === undefined ? [] : [at];
  });
  const [is, whole] = rulesOn(places, now);
  const [hints, limits]: [Finding[], Finding[]] = [[], []];
  const tooMany = lookFinding(
    `sheet ${found.name}`,
    "rules for what is typed, on more cells than are looked at",
    "the template's rules",
  );
  for (const [home, rule] of was) {
    const at = map.to(positionOf(home) ?? { row: 0, column: 0 });
    const here = at === undefined ? undefined : is.get(addressOf(at));
    // an input without its rule is told elsewhere
    if (at === undefined || here === undefined) continue;
    const where = `${found.name}!${addressOf(at)}`;
    if (bare(here.prompt) !== bare(rule.prompt)) {
      hints.push(
        lookFinding(where, `the hint ${said(here.prompt)}`, said(rule.prompt), {
          code: "text-changed",
        }),
      );
    }
    const [may, might] = [taken(here), taken(rule)];
    if (may === undefined || might === undefined || may === might) continue;
    limits.push(
      lookFinding(where, `what may be typed: ${may}`, might, {
        grade: "to know",
        code: "rule-missing",
        advice: "Nothing: the message beside the input still tells a value that breaks its rule.",
      }),
    );
  }
  return [
    ...(whole ? [] : [tooMany]),
    ...grouped(hints, 3),
    ...grouped(beside(pair), 3),
    ...grouped(limits, 3),
  ];
}

/** Hints that come up beside cells which show something and that nobody types into. */
function beside({ found, now, then, map, shown }: LookPair): Finding[] {
  const hinting = now.typing.filter(({ prompt }) => bare(prompt) !== "");
  if (hinting.length === 0) return [];
  const own = writtenRules(then);
  const others = shown.filter(({ home }) => !own.has(addressOf(home)));
  const [is] = rulesOn(
    others.map(({ at }) => at),
    { ...now, typing: hinting },
  );
  return [...is].flatMap(([address, { prompt }]) => {
    const home = map.from(positionOf(address) ?? { row: 0, column: 0 });
    if (home === undefined) return [];
    return [
      lookFinding(
        `${found.name}!${address}`,
        `the hint ${said(short(prompt))} beside it`,
        "no hint",
        {
          code: "text-changed",
        },
      ),
    ];
  });
}

/** The rules as we wrote them, by cell. */
function writtenRules({ typing }: SheetLook): Map<string, TypingRule> {
  const found = new Map<string, TypingRule>();
  for (const rule of typing) {
    const cells = new Set<string>();
    addCovered(cells, rule.areas);
    for (const cell of cells) found.set(cell, rule);
  }
  return found;
}

/** Many areas one over another must not take the time: what comes after is not looked at, which is told. */
const mostSteps = 2e6;
const mostOfAreas = 20_000;

/** The last rule on each of some cells, and whether all rules were looked at. */
function rulesOn(
  cells: readonly Position[],
  { typing }: SheetLook,
): [Map<string, TypingRule>, boolean] {
  const found = new Map<string, TypingRule>();
  const wanted = cells.map((at) => ({ at, address: addressOf(at) }));
  let steps = 0;
  for (const rule of typing) {
    if (rule.areas.length > mostOfAreas) return [found, false];
    for (const area of areasOf(rule.areas)) {
      steps += wanted.length;
      if (steps > mostSteps) return [found, false];
      for (const { at, address } of wanted) if (within([area], at)) found.set(address, rule);
    }
  }
  return [found, true];
}

const bare = (text: string): string => text.replace(/\s+/g, " ").trim();

/** A rule of fixed limits or choices in one spelling; undefined where it reads cells. */
function taken({ kind, formulas }: TypingRule): string | undefined {
  // LibreOffice gives a list a second formula, 0
  const own = kind === "list" ? formulas.slice(0, 1) : formulas;
  const parts = own.map((one) => {
    if (/^"[^"]*"$/.test(one)) return one.slice(1, -1).split(",").map(bare).join(", ");
    return one.trim() !== "" && Number.isFinite(Number(one)) ? String(Number(one)) : undefined;
  });
  if (parts.includes(undefined)) return undefined;
  return kind === "list" ? `one of ${parts.join(", ")}` : `${kind} ${parts.join(" to ")}`;
}
