import { Command, Option } from "commander";
import { RillbookError } from "../errors.js";
import { describeMeasure } from "../formula/named-formula.js";
import { nearName } from "../formula/near-name.js";
import { newestTemplate } from "../job/read.js";
import { modelOf } from "../template/models.js";
import { spokenFormula } from "../template/printed.js";
import { type UnitSystem, unitSystems } from "../units/quantity.js";
import { namedCells } from "../workbook/write/names-sheet.js";
import type { Context } from "./context.js";
import { templateNames } from "./which-template.js";

/** `rillbook names`: every name of a template. */
export function namesCommand(context: Context): Command {
  return new Command("names")
    .description("list every name of a template: what it means, its unit, its formula, its source")
    .argument(
      "[words...]",
      "only names that have all of these in them or in their meaning (default: all)",
    )
    .option("--template <name>", `template (${templateNames(context)})`)
    .addOption(new Option("--units <system>", "units").choices(unitSystems).default("us"))
    .option("--json", "as JSON")
    .addHelpText("after", "\nExample:\n  rillbook names margin")
    .action((words: string[], options: { template?: string; units: UnitSystem; json?: true }) => {
      const template = newestTemplate(options.template, context.templates, "--template");
      const model = modelOf(template, options.units);
      const cells = namedCells(model).map((cell) => ({
        name: cell.name,
        kind: cell.declaration.kind as string,
        means: cell.declaration.label,
        unit: cell.unit.name,
        formula: spokenFormula(cell),
        source: cell.declaration.source ?? "",
      }));
      const formulas = [...model.formulas.values()].map((own) => ({
        name: own.name,
        kind: "named formula",
        means: own.meaning,
        unit: describeMeasure(own.result),
        formula: own.text,
        source: own.source,
      }));
      const all = namedBy([...cells, ...formulas], words);
      if (options.json) {
        context.json(all, 2);
        return;
      }
      for (const { name, kind, means, unit, formula, source } of all) {
        const parts = [
          name,
          kind,
          unit,
          means,
          formula && `= ${formula}`,
          source && `source: ${source}`,
        ];
        context.out(`${parts.filter(Boolean).join(" | ")}\n`);
      }
    });
}

/** Those of which name and meaning hold all the words. Throws RillbookError where none does. */
function namedBy<T extends { readonly name: string; readonly means: string }>(
  all: readonly T[],
  words: readonly string[],
): readonly T[] {
  const wanted = words.map((one) => one.toLowerCase());
  const found = all.filter(({ name, means }) =>
    wanted.every((word) => `${name} ${means}`.toLowerCase().includes(word)),
  );
  if (found.length > 0) return found;
  const near = nearName(
    words.join("_"),
    all.map(({ name }) => name),
  );
  throw new RillbookError(
    "name-unknown",
    `No name has "${words.join(" ")}" in it or in its meaning.${near} "rillbook names" lists all.`,
  );
}
