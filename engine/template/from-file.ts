import { existsSync, statSync } from "node:fs";
import { register } from "node:module";
import { basename, extname, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { RillbookError } from "../errors.js";
import type { Template } from "./template.js";

/** Is it the name of a file with templates, and not that of a template? */
export const isTemplateFile = (given: string): boolean =>
  /\.[cm]?[jt]s$/i.test(given) || /[/\\]/.test(given);

/**
 * Loads the templates of a file of an office's own, a JavaScript module: its default export, `template` or `templates`.
 * Running it is what a person asks for by naming it; no workbook or record can. Rejects with RillbookError for a file
 * that cannot be loaded, or exports none.
 */
export async function templatesFrom(file: string): Promise<Template[]> {
  if (/\.[cm]?ts$/i.test(file)) {
    throw fault(
      file,
      `is TypeScript, which is compiled first: tsc ${basename(file)}, then name the .js`,
    );
  }
  const path = resolve(file);
  const state = statSync(path, { throwIfNoEntry: false });
  if (state === undefined) throw fault(file, "does not exist. Check the name");
  // to import a pipe would be to wait for who writes into it
  if (!state.isFile()) throw fault(file, "is no file, but a folder, a pipe or a device");
  importOurs();
  const found = await modulesExports(file, path);
  const given = [found.default, found.template, found.templates].flat();
  const templates = [...new Set(given.filter((one) => one !== undefined))];
  if (templates.length === 0) {
    const names = Object.keys(found).join(", ") || "nothing";
    throw fault(
      file,
      `exports ${names}, but no template. End it with: export default template({ name: …, version: 1, … })`,
    );
  }
  return templates.map((one) => {
    mustBeTemplate(one, file);
    return Object.freeze({ ...one, own: { file: basename(file) } });
  });
}

async function modulesExports(file: string, path: string): Promise<Record<string, unknown>> {
  try {
    return { ...(await import(pathToFileURL(path).href)) };
  } catch (error) {
    if (error instanceof RillbookError) throw error;
    const { name, message } = error instanceof Error ? error : { name: "", message: String(error) };
    const kind = extname(file) === ".js" ? " Is it an ES module? Name it .mjs then" : "";
    throw fault(file, `cannot be loaded: ${name}: ${message.split("\n")[0]}.${kind}`);
  }
}

function mustBeTemplate(given: unknown, file: string): asserts given is Template {
  const { name, version, title, sheets, formulas, headline } = (given ?? {}) as Partial<Template>;
  const lacking = [
    ...(typeof name === "string" && /^[a-z][a-z0-9_-]{0,60}$/.test(name)
      ? []
      : ["name, in lower case"]),
    ...(Number.isInteger(version) && (version as number) > 0 ? [] : ["version, a number from 1"]),
    ...(typeof title === "string" ? [] : ["title"]),
    ...(Array.isArray(sheets) ? [] : ["sheets"]),
    ...(Array.isArray(formulas) && Array.isArray(headline) ? [] : ["what template(…) adds"]),
  ];
  if (lacking.length === 0) return;
  throw fault(
    file,
    `exports what is no template: it lacks ${lacking.join("; ")}. Make it by template(…) or extend(…) of "rillbook"`,
  );
}

const fault = (file: string, what: string): RillbookError =>
  new RillbookError("template-file", `The template file ${file} ${what}.`);

let ours = false;

/**
 * From here on `import … from "rillbook"` in any file means this program, wherever the file lies and whatever is
 * installed beside it.
 */
function importOurs(): void {
  const hooks = new URL("../template/own-imports.js", import.meta.url);
  // uncompiled sources are loaded by a program that knows where packages lie
  if (ours || !existsSync(fileURLToPath(hooks))) return;
  ours = true;
  register(hooks);
}
