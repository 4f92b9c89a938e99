import type { UnitSystem } from "../units/quantity.js";
import { compile } from "./compile.js";
import type { Model } from "./model.js";
import type { Template } from "./template.js";

/** Where compiled models are kept from one run of the program to the next. */
export interface ModelStore {
  /** The model, where one is kept that was made from this very template by this very engine. */
  readonly find: (template: Template, system: UnitSystem) => Model | undefined;
  readonly keep: (model: Model) => void;
}

const models = new WeakMap<Template, Partial<Record<UnitSystem, Model>>>();
let store: ModelStore | undefined;

/** From here on models are looked for in this store first: for programs, as they start. */
export function useStore(one: ModelStore): void {
  store = one;
}

/** The model of a template under a system of units: from the store, or compiled at the first call. Throws TemplateError. */
export function modelOf(template: Template, system: UnitSystem): Model {
  const known = models.get(template) ?? {};
  models.set(template, known);
  known[system] ??= store?.find(template, system) ?? compiled(template, system);
  return known[system];
}

function compiled(template: Template, system: UnitSystem): Model {
  const model = compile(template, system);
  store?.keep(model);
  return model;
}
