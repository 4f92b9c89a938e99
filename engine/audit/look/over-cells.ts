import { addressOf, type Position, positionOf } from "../../workbook/read/address.js";
import { type Area, areaOf } from "../../workbook/read/area.js";
import type { CellValue } from "../../workbook/read/content.js";
import type { Finding } from "../finding.js";
import { printAreas, within } from "../printed-part.js";
import { grouped, said, short } from "../subject.js";
import { checkCharts } from "./charts.js";
import { type LookPair, lookFinding } from "./compared.js";
import { covers, extentOf, liesWithin, meets } from "./extent.js";

/** What lies over the cells: merged cells, pictures, text boxes, charts, notes. */
export function checkOverCells(pair: LookPair, all: readonly LookPair[]): Finding[] {
  return [...merges(pair), ...drawn(pair), ...checkCharts(pair, all), ...notes(pair)];
}

const saidArea = ({ from, to }: Area): string => `${addressOf(from)}:${addressOf(to)}`;

/** A forged sheet must not take the time: what comes after is not looked at, which is told. */
const mostSteps = 2e6;

/** Cells joined over others that show something, and texts that lost the room they had. */
function merges(pair: LookPair): Finding[] {
  const { found, fresh, map, now, then, handout } = pair;
  const shown = new Map(
    pair.shown.map(({ address, at, now: { value } }) => [address, { at, value }]),
  );
  const was = new Map<string, Area>();
  for (const area of then.merges.map(areaOf)) {
    const [from, to] = [area && map.to(area.from), area && map.to(area.to)];
    if (from !== undefined && to !== undefined) was.set(saidArea({ from, to }), { from, to });
  }
  const is = new Set(now.merges.map((one) => one.replaceAll("$", "").toUpperCase()));
  let steps = 0;
  const joined: Area[] = [];
  const over = [...is].flatMap((text) => {
    const area = areaOf(text);
    if (area === undefined || was.has(saidArea(area)) || steps > mostSteps) return [];
    const covered: string[] = [];
    let lost: CellValue = null;
    for (const [address, { at, value }] of shown) {
      steps += 1;
      if (!within([area], at) || address === addressOf(area.from)) continue;
      lost ??= value;
      if (covered.push(address) === 6) break;
    }
    if (covered.length === 0) return [];
    joined.push(area);
    const words = typeof lost === "string" ? `: ${said(short(lost))}` : "";
    const what = `cells joined over ${covered.join(", ")}, which then show nothing${words}`;
    // on a page that is handed out its reader never learns of it
    const grade = handout ? "wrong" : "doubtful";
    return [lookFinding(`${found.name}!${text}`, what, "cells apart", { grade })];
  });
  if (steps > mostSteps) {
    const many = `${is.size} areas of joined cells, more than are looked at`;
    over.unshift(lookFinding(`sheet ${found.name}`, many, `${was.size} areas`));
  }
  const cut = [...was].flatMap(([text, { from }]) => {
    if (is.has(text) || !shown.has(addressOf(from))) return [];
    // joined otherwise, which is told
    if (within(joined, from)) return [];
    const home = map.from(from);
    const cell = home === undefined ? undefined : fresh.cells.get(addressOf(home));
    // a short text keeps its room
    if (typeof cell?.value !== "string" || cell.value.length <= 40) return [];
    return [lookFinding(`${found.name}!${text}`, "cells taken apart, which cuts their text", text)];
  });
  return [...grouped(over, 3), ...grouped(cut, 3)];
}

const kinds: Readonly<Record<string, string>> = {
  pic: "a picture",
  sp: "a text box or shape",
  cxnSp: "a line",
  contentPart: "an ink drawing",
};

/**
 * Pictures, boxes and shapes. Those clear of all cells that show something and of the printed page are notes; a
 * picture also in a place that its page keeps for one, and where the page that prints it is not handed out.
 */
function drawn(pair: LookPair): Finding[] {
  const { found, content, now, then, slots } = pair;
  if (then.drawn.length >= now.drawn.length && now.drawn.every(({ kind }) => !(kind in kinds))) {
    return [];
  }
  const shown = pair.shown.map(({ at }) => at);
  const areas = printAreas(content, found.name);
  return now.drawn.flatMap((one) => {
    const what = kinds[one.kind];
    if (what === undefined) return [];
    const text = one.text === "" ? "" : ` that says ${said(one.text)}`;
    if (one.kind === "pic" && slots.some((slot) => liesWithin(one, slot, now))) {
      const at = addressOf(one.from as Position);
      const where = `sheet ${found.name}`;
      return [lookFinding(where, `${what}${text} at ${at}`, "a picture or none", inItsPlace)];
    }
    const extent = extentOf(one, now);
    const covered = shown.filter((at) => covers(extent, at));
    const prints = extent === undefined || meets(areas, extent);
    const own = one.kind === "pic" && !pair.handout;
    const clear = extent !== undefined && covered.length === 0 && (own || !prints);
    const place =
      covered[0] === undefined
        ? one.from === undefined
          ? ""
          : ` at ${addressOf(one.from)}`
        : `, over ${addressOf(covered[0])} and what follows`;
    return [
      lookFinding(`sheet ${found.name}`, `${what}${text}${place}`, "cells in sight", {
        code: "drawn",
        ...(clear ? noted(prints) : {}),
      }),
    ];
  });
}

const inItsPlace = {
  code: "drawn",
  grade: "to know",
  advice: "Nothing, if it is the office's own: the page keeps this place for a picture.",
} as const;

const noted = (prints: boolean) => ({
  grade: "to know" as const,
  advice: prints
    ? "Nothing: a picture of the office's own, over no figure and on no page that is handed out."
    : "Nothing: it covers nothing and does not print.",
});

function notes({ found, now, then, map }: LookPair): Finding[] {
  const known = new Set<string>();
  const changed: Finding[] = [];
  for (const [address, text] of then.notes) {
    const home = positionOf(address);
    const to = home === undefined ? undefined : map.to(home);
    if (to === undefined) continue;
    known.add(addressOf(to));
    const is = now.notes.get(addressOf(to));
    if (is !== undefined && plainNote(is) !== plainNote(text)) {
      const where = `${found.name}!${addressOf(to)}, its note`;
      changed.push(
        lookFinding(where, said(short(is)), said(short(text)), { code: "text-changed" }),
      );
    }
  }
  const added = [...now.notes].flatMap(([address, text]): Finding[] =>
    known.has(address)
      ? []
      : [
          lookFinding(`${found.name}!${address}, a note`, said(short(text)), "no note", {
            code: "note",
            grade: "to know",
            advice: "Nothing, if it is a remark.",
          }),
        ],
  );
  const open = now.openNotes - then.openNotes;
  return [
    ...grouped(changed, 5),
    ...grouped(added, 5),
    ...(open > 0
      ? [lookFinding(`sheet ${found.name}`, `${open} notes stand open over cells`, "notes closed")]
      : []),
  ];
}

const plainNote = (text: string): string => text.replace(/\s+/g, " ").trim();
