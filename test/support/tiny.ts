import { compile } from "../../engine/template/compile.js";
import * as t from "../../engine/template/index.js";
import { TemplateError } from "../../engine/template/template-error.js";

/** A template of one sheet, with what a test is about. */
export function tiny(blocks: readonly t.Block[], more: Partial<t.Template> = {}): t.Template {
  return t.template({
    name: "tiny",
    version: 1,
    title: "Tiny",
    sheets: [t.sheet("Page", "For a test.", blocks)],
    formulas: [],
    headline: [],
    ...more,
  });
}

/** The same of one block of lines; two inputs in use are there already: plot (ft) and title. */
export function tinyLines(
  cells: t.LinesBlock["cells"],
  more: Partial<t.Template> = {},
  blocks: readonly t.Block[] = [],
): t.Template {
  const given = { plot: t.input(t.length, "Plot"), title: t.input(t.text, "Title") };
  const used = { used_plot: t.calc(t.length, "plot", ""), used_title: t.calc(t.text, "title", "") };
  return tiny([t.lines("Given", { ...given, ...used }), t.lines("Lines", cells), ...blocks], more);
}

/** The model, or a list of faults. */
export function faultsOf(template: t.Template, system: t.UnitSystem = "us"): readonly string[] {
  try {
    compile(template, system);
    return [];
  } catch (error) {
    if (error instanceof TemplateError) return error.faults;
    throw error;
  }
}
