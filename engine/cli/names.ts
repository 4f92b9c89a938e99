import { Command, Option } from "commander";
import { describeMeasure } from "../formula/named-formula.js";
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
    .option("--template <name>", `template (${templateNames(context)})`)
    .addOption(new Option("--units <system>", "units").choices(unitSystems).default("us"))
    .option("--json", "as JSON")
    .addHelpText("after", "\nExample:\n  rillbook names | grep price")
    .action((options: { template?: string; units: UnitSystem; json?: true }) => {
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
      const all = [...cells, ...formulas];
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
