import type { Model } from "../template/model.js";
import type { Template } from "../template/template.js";
import type { UnitSystem } from "../units/quantity.js";
import { withKeptModels } from "./models.js";

/**
 * Compiles a template for one system of units: places every cell, checks every name, unit and formula, and
 * finds the order of calculation. A template is compiled once for each system.
 * Rejects with TemplateError, which lists all faults found.
 *
 * @param system `us` for US customary units, `si` for metric ones
 */
export async function compile(template: Template, system: UnitSystem): Promise<Model> {
  await withKeptModels();
  const { modelOf } = await import("../template/models.js");
  return modelOf(template, system);
}
