import { createRequire } from "node:module";
import type { Ajv, ValidateFunction } from "ajv";
import { madeCodeOf } from "../template/made-code.js";
import type { Model } from "../template/model.js";
import { jobSchema } from "./schema.js";

// read when it is needed: a model from a store brings its validator along
const load = createRequire(import.meta.url);
function newAjv(source: boolean): Ajv {
  const { Ajv } = load("ajv") as typeof import("ajv");
  return new Ajv({
    allErrors: true,
    verbose: true,
    allowUnionTypes: true,
    strict: false,
    // a record is checked once: optimizing the code for it takes longer than it saves
    code: { optimize: false, source },
  });
}

const validators = new WeakMap<Model, ValidateFunction>();

/** The check of job records of a model against its schema, made once. */
export function validatorFor(model: Model): ValidateFunction {
  const known = validators.get(model);
  if (known !== undefined) return known;
  const made = madeCodeOf(model);
  const validator =
    made === undefined ? newAjv(false).compile(jobSchema(model)) : exported(made.validator());
  validators.set(model, validator);
  return validator;
}

/** The same check as the body of a module, to be kept. */
export function validatorText(model: Model): string {
  const { default: textOf } = load(
    "ajv/dist/standalone",
  ) as typeof import("ajv/dist/standalone/index.js");
  const ajv = newAjv(true);
  return textOf(ajv, ajv.compile(jobSchema(model)));
}

/** What the body of a module exports; it asks for parts of ajv. */
function exported(text: string): ValidateFunction {
  const module: { exports: unknown } = { exports: undefined };
  new Function("module", "require", text)(module, load);
  return module.exports as ValidateFunction;
}
