import { inputPlanOf } from "../job/input-plan.js";
import type { Cell, Model } from "../template/model.js";
import { precedents } from "../template/order.js";
import type { Finding } from "./finding.js";
import { heldInput } from "./held-input.js";
import { placeOf, type Subject } from "./subject.js";

/** Inputs that hold what they cannot be, such as words for a number, and what rests on them. */
export interface FaultyInputs {
  readonly findings: readonly Finding[];
  /** The cells that read them, whatever lies between, by id. */
  readonly resting: ReadonlySet<string>;
}

/** Holds each input against what it may be, as it is held when a workbook is taken. */
export function faultyInputs({ model, match }: Subject): FaultyInputs {
  const faulty: Cell[] = [];
  const findings = inputPlanOf(model).inputs.flatMap(({ cell }): Finding[] => {
    const place = match.at.get(cell.id);
    const held = place === undefined ? null : heldInput(model, cell, place);
    if (place === undefined || typeof held !== "object" || held === null) return [];
    faulty.push(cell);
    return [
      {
        grade: "wrong",
        code: "input-kind",
        where: placeOf(place),
        name: cell.id,
        found: `${cell.declaration.label} ${held.found}`,
        expected: held.expected,
        advice: held.advice || "Type it again.",
      },
    ];
  });
  return { findings, resting: restingOn(model, faulty) };
}

function restingOn(model: Model, cells: readonly Cell[]): Set<string> {
  const resting = new Set(cells.map(({ id }) => id));
  if (cells.length === 0) return resting;
  for (const { id, native, row } of model.order) {
    if (native === undefined) continue;
    if (precedents(model, native, row ?? 0).some((one) => resting.has(one.id))) resting.add(id);
  }
  return resting;
}

/**
 * Does a finding only follow from inputs at fault: a check or a result that rests on them, a result of sheets such as
 * Summary, which say what cells hold, a page that is laid out otherwise because of them?
 *
 * @param otherwise is it also found where the workbook is held against itself as it was written?
 */
export function followsFromFaulty(
  { resting }: FaultyInputs,
  { code, name }: Finding,
  otherwise: boolean,
): boolean {
  if (resting.size === 0) return false;
  if (code === "check-failed") return name !== undefined && resting.has(name);
  if (code === "value-stale") return name === undefined || resting.has(name);
  return (code === "hidden" || code === "look") && !otherwise;
}

/** The findings of inputs at fault, the last of which counts what follows from them. */
export function counted(findings: readonly Finding[], following: number): Finding[] {
  const last = findings.at(-1);
  if (last === undefined || following === 0) return [...findings];
  const these = findings.length === 1 ? "this input" : `these ${findings.length} inputs`;
  const more =
    following === 1
      ? `1 further result follows from ${these} and is looked at again once it is mended.`
      : `${following} further results follow from ${these} and are looked at again once ${findings.length === 1 ? "it is" : "they are"} mended.`;
  return [...findings.slice(0, -1), { ...last, advice: `${last.advice} ${more}` }];
}
