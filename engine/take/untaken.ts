import { checkFormulas, checkPublished, checkWrittenPrices, modelFor } from "../audit/index.js";
import type { Value } from "../formula/value.js";
import type { TrailEntry } from "../job/trail/entry.js";
import { recorded } from "../job/trail/inputs.js";
import type { Edits } from "../output/judge.js";
import { sealIn } from "../seal/index.js";
import type { InputValue } from "../template/declare.js";
import type { Model } from "../template/model.js";
import type { Template } from "../template/template.js";
import { identityOfWorkbook } from "../workbook/match/identity.js";
import { matchWorkbook } from "../workbook/match/match.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { cellInputs } from "./cells.js";
import { asWritten } from "./written.js";

/** The inputs that go into the workbook that is to be written, and how they came about. */
export interface Known {
  readonly model: Model;
  readonly values: readonly Value[];
  readonly trail: readonly TrailEntry[];
}

/** Looks for what a person changed in a bid workbook, and what is not kept anywhere else. */
export const editsAgainst =
  (templates: readonly Template[], known?: Known) =>
  (content: WorkbookContent): Edits => ({
    ...editsOf(content, templates, known),
    sealed: sealIn(content.properties.custom) !== undefined,
  });

function editsOf(
  content: WorkbookContent,
  templates: readonly Template[],
  known: Known | undefined,
): Edits {
  const identity = identityOfWorkbook(content);
  const model = modelFor(identity, templates);
  if (!("cells" in model)) return { inputs: [], besides: [], untold: model.found };
  const match = matchWorkbook(content, model);
  const subject = { content, model, match };
  let written: ReturnType<typeof asWritten>;
  try {
    written = asWritten(model, content, identity, "itself");
  } catch {
    return { inputs: [], besides: [], untold: "its trail is not as it was written" };
  }
  const { values, formulas, faults } = cellInputs(model, match);
  if (faults.length > 0) return { inputs: [], besides: [], untold: faults[0] as string };
  const kept = known === undefined ? () => false : isKept(known);
  const inputs = [...values].flatMap(([id, value]) => {
    const changed = value !== (written.inputs.get(id) ?? null);
    return (changed && !kept(id, value)) || formulas.has(id) ? [id] : [];
  });
  const besides = [
    ...checkFormulas(subject).findings.filter(({ code }) => code !== "input-formula"),
    ...checkPublished(subject),
    ...checkWrittenPrices(subject),
  ]
    .filter(({ grade }) => grade !== "to know")
    .flatMap(({ names, name, where }) => names ?? [name ?? where]);
  return { inputs, besides: [...new Set(besides)] };
}

/** A value is kept where it is what will be written, or where the trail says that it once was. */
function isKept({ model, values, trail }: Known) {
  return (id: string, value: InputValue | null): boolean => {
    const cell = model.byId.get(id);
    if (cell !== undefined && recorded(cell, values[cell.index]) === value) return true;
    return trail.some(({ input, new: now }) => input === id && now === value);
  };
}
