import type { UnitSystem } from "../units/quantity.js";
import { compile } from "./compile.js";
import type { Model } from "./model.js";
import type { Template } from "./template.js";

const models = new WeakMap<Template, Partial<Record<UnitSystem, Model>>>();

/** The model of a template under a system of units, compiled at the first call. Throws TemplateError. */
export function modelOf(template: Template, system: UnitSystem): Model {
  const known = models.get(template) ?? {};
  models.set(template, known);
  known[system] ??= compile(template, system);
  return known[system];
}
