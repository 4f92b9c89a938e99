import { addressOf, positionOf } from "../../workbook/read/address.js";
import { addCovered } from "../../workbook/read/covered.js";
import type { SheetLook, TypingRule } from "../../workbook/read/look/content.js";
import type { Finding } from "../finding.js";
import { grouped, said } from "../subject.js";
import { type LookPair, lookFinding } from "./compared.js";

/**
 * What a person is told while typing into an input, and what the program then takes: another hint is a finding, other
 * limits or choices are a note, since the message beside the input still tells a value that breaks its rule.
 */
export function checkTyping({ found, now, then, map }: LookPair): Finding[] {
  const [is, was] = [rulesByCell(now), rulesByCell(then)];
  const [hints, limits]: [Finding[], Finding[]] = [[], []];
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
  return [...grouped(hints, 3), ...grouped(limits, 3)];
}

/** Many areas one over another must not take the time. */
const mostCells = 200_000;

function rulesByCell({ typing }: SheetLook): Map<string, TypingRule> {
  const found = new Map<string, TypingRule>();
  let looked = 0;
  for (const rule of typing) {
    if (looked > mostCells) break;
    const cells = new Set<string>();
    addCovered(cells, rule.areas);
    looked += cells.size;
    for (const cell of cells) found.set(cell, rule);
  }
  return found;
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
