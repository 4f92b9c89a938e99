import { rmSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { compile } from "../template/compile.js";
import type { Template } from "../template/template.js";
import { unitSystems } from "../units/quantity.js";
import { packageFolder } from "./folders.js";
import { put } from "./store.js";

/** A step of the build: compiles the templates of a module, and keeps their models in the package. */
const [module = ""] = process.argv.slice(2);
const { templates } = (await import(pathToFileURL(module).href)) as {
  templates: readonly Template[];
};
rmSync(packageFolder, { recursive: true, force: true });
for (const template of templates) {
  for (const system of unitSystems) put(packageFolder, compile(template, system));
}
