import { wordsIn } from "../../engine/template/index.js";
import { crewPage } from "../plan/crew-page.js";
import { handOverPage } from "../plan/hand-over-page.js";
import { pageOf } from "../plan/page-line.js";
import { proposalPage } from "../plan/proposal-page.js";
import { stages } from "../plan/stages.js";
import { type SheetName, worksheets } from "../plan/worksheets.js";
import { words } from "./added.js";
import type { BuysOfSheet, Whole } from "./brought.js";
import { type Buy, item } from "./goods.js";
import type { Part } from "./part.js";
import { rateGroups } from "./rates.js";
import { ratesOf } from "./task.js";

/** Puts together what the parts bring. Throws RangeError where two of them contradict each other. */
export function wholeOf(parts: readonly Part[]): Whole {
  const tasks = inOrder(
    parts.flatMap(({ tasks = [] }) => tasks),
    ({ stage }) => stages.indexOf(stage),
  );
  const ratesRead = parts.flatMap(({ rates: own = [] }) => own.map(({ code }) => code));
  const rates = parts.flatMap(({ rates = [], tasks: own = [], hires = [] }) => [
    ...own.flatMap(ratesOf),
    ...rates,
    ...hires.map(({ rate }) => rate),
  ]);
  const takeoff = parts.flatMap(({ takeoff: own = [] }) => own);
  const trenches = parts.flatMap(({ trenches: own = [] }) => own);
  const digs = parts.flatMap(({ digs: own = [] }) => own);
  const crew = parts.flatMap(({ crew: own = [] }) =>
    typeof own === "function" ? own({ tasks, trenches, digs }) : own,
  );
  const proposal = parts.flatMap(({ proposal: own = [] }) => own);
  return {
    tasks,
    title: parts.find(({ title }) => title !== undefined)?.title ?? "Water feature",
    added: (sum) => parts.flatMap(({ adds = {} }) => adds[sum] ?? []),
    cellsAt: (spot) => Object.assign({}, ...parts.map(({ cells = {} }) => cells[spot] ?? {})),
    metered: parts.flatMap(({ metered = [] }) => metered),
    readings: parts.flatMap(({ readings = [] }) => readings),
    heavy: parts.flatMap(({ heavy }) => heavy ?? []),
    digs,
    words: Object.assign({}, words, ...parts.map(({ words: own = {} }) => own)),
    purposes: Object.assign({}, ...parts.map(({ purposes = {} }) => purposes)),
    rates: inOrder(onceEach(rates), ({ group }) => rateGroups.indexOf(group)),
    ratesRead,
    items: onceEach([
      ...parts.flatMap(({ items = [] }) => items),
      ...takeoff.map(({ code, what, unit, placeholder }) => item(code, wordsIn(what, "us"), unit, placeholder)),
    ]),
    buys: buysOf(parts),
    takeoff,
    hires: parts.flatMap(({ hires = [] }) => hires),
    trenches,
    crew: pageOf(crewPage, crew),
    proposal: pageOf(proposalPage, proposal),
    handOver: pageOf(
      handOverPage,
      parts.flatMap(({ handOver = [] }) => handOver),
    ),
    proposalDrawings: parts.flatMap(({ proposalDrawings = [] }) => proposalDrawings),
    crewDrawings: parts.flatMap(({ crewDrawings = [] }) => crewDrawings),
  };
}

/** By rank, and within a rank as they came. */
const inOrder = <T>(list: readonly T[], rank: (one: T) => number): T[] => [...list].sort((a, b) => rank(a) - rank(b));

/** Each code once: several parts may bring the same, but not two meanings of it. */
function onceEach<T extends { readonly code: string }>(list: readonly T[]): T[] {
  const known = new Map<string, T>();
  for (const one of list) {
    const before = known.get(one.code) ?? one;
    if (JSON.stringify(before) !== JSON.stringify(one)) {
      throw new RangeError(
        `Two parts bring the code "${one.code}" with different meanings: ${JSON.stringify(before)} and ${JSON.stringify(one)}. Declare it once and use it in both, or give one another code.`,
      );
    }
    known.set(one.code, before);
  }
  return [...known.values()];
}

/** What each sheet lists to buy, from whichever parts; in the order of the sheets. */
function buysOf(parts: readonly Part[]): BuysOfSheet[] {
  const found = new Map<SheetName, Buy[]>();
  for (const { buys = {} } of parts) {
    for (const [sheet, own] of Object.entries(buys) as [SheetName, Buy[]][]) {
      found.set(sheet, [...(found.get(sheet) ?? []), ...own]);
    }
  }
  return worksheets.flatMap(({ name }) => {
    const buys = found.get(name);
    return buys === undefined ? [] : [{ sheet: name, table: `${name.toLowerCase()}_buys`, buys }];
  });
}
