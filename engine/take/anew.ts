import { RillbookError } from "../errors.js";
import { newJob } from "../job/start.js";
import { appended } from "../job/trail/chain.js";
import { recorded } from "../job/trail/inputs.js";
import { validateJob } from "../job/validate.js";
import { unknownChoices, valuesAsGiven } from "../job/values.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { Template } from "../template/template.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { changesOf, type Taker } from "./changes.js";
import { filledIn, refuse } from "./filled-in.js";
import { unsayable, withInputs } from "./inputs.js";
import { changedBesideInputs } from "./other-changes.js";
import type { Taken } from "./take.js";

/** What a person says of a workbook that no longer shows it by itself. */
export interface Confirmed {
  /** Name of the template. */
  readonly template: string;
  /** Path of its office book, as the record is to name it; the starter book where it is left out. */
  readonly office?: string;
  /** That book, by the model's units. */
  readonly book: (template: Template, units: "us" | "si") => OfficeValues & { name: string };
}

/**
 * Makes a new job record from the inputs of a workbook whose custom properties a library dropped. Nothing
 * shows that its trail is whole, so the new record's trail begins with what the cells hold now, each input told
 * as found in the workbook. Throws RillbookError where the properties are there, where the first sheet
 * names another template or office book than was said, and for inputs against their rules.
 */
export function takeAnew(
  content: WorkbookContent,
  templates: readonly Template[],
  file: string,
  taker: Taker,
  { template, office, book: bookOf }: Confirmed,
): Taken {
  const { identity, lost, model, match, cells } = filledIn(content, templates, file);
  if (!lost) {
    throw new RillbookError(
      "properties-there",
      `${file} says itself which template it has and how its trail ends. Leave --template and --office out: rillbook take ${file}.`,
    );
  }
  if (model.template.name !== template) {
    throw new RillbookError(
      "template-other",
      `--template says "${template}", but the first sheet of ${file} says "${model.template.name}". Give the one it was made with.`,
    );
  }
  const book = bookOf(model.template, model.system);
  if (identity.book !== undefined && identity.book !== book.name) {
    const given = office === undefined ? "no office book was given" : `${office} is "${book.name}"`;
    throw new RillbookError(
      "office-other",
      `The first sheet of ${file} says that its prices and rules are those of the office book "${identity.book}", but ${given}. Name that book: --office <file>.`,
    );
  }
  const { guide: _, ...fresh } = newJob(model, identity.job ?? "", office);
  const { about } = identity;
  const base = { ...fresh, inputs: {}, ...(about === undefined ? {} : { about }) };
  const usual = valuesAsGiven(model, base, book);
  const before = new Map(model.cells.map((cell) => [cell.id, recorded(cell, usual[cell.index])]));
  const note = [taker.note, beganAnew].filter(Boolean).join("; ");
  const changes = changesOf(model, content, cells, before, { ...taker, note });
  // where a value was measured stood in the trail that cannot be shown to be whole
  const from = "changed in the workbook";
  const trail = appended(
    [],
    changes.map((one) => ({ ...one, from })),
  );
  const raw = { ...base, inputs: withInputs(model, base, cells.values, book), trail };
  const job = validateJob(model, raw, `taken from ${file}`);
  refuse(file, unsayable(model, job, cells.values, book));
  refuse(file, unknownChoices(model, valuesAsGiven(model, job, book)));
  return {
    job,
    entries: trail,
    findings: changedBesideInputs({ content, model, match }),
  };
}

const beganAnew = "trail begun anew: the workbook had lost its custom properties";
