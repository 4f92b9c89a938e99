import { withMadeCode } from "../template/made-code.js";
import type { Model } from "../template/model.js";
import type { ModelStore } from "../template/models.js";
import type { Template } from "../template/template.js";
import type { UnitSystem } from "../units/quantity.js";
import { pathIn, readKept, writeKept } from "./file.js";
import { cacheFolder, packageFolder } from "./folders.js";
import { markOf } from "./mark.js";
import { packed } from "./pack.js";
import { unpacked } from "./unpack.js";

/** The store of the program: what its package brings, and what was compiled on this machine for this user. */
export const programStore = (): ModelStore => storeIn([packageFolder, cacheFolder()]);

/**
 * Models kept in folders, looked for in turn; a new one goes into the last. A file that is stale or
 * damaged counts as none, and is written anew.
 */
export function storeIn(folders: readonly string[]): ModelStore {
  return {
    find: (template, system) => {
      const mark = markOf(template, system);
      if (mark === undefined) return undefined;
      for (const folder of folders) {
        const found = modelIn(folder, mark, template, system);
        if (found !== undefined) return found;
      }
      return undefined;
    },
    keep: (model) => {
      const folder = folders.at(-1);
      if (folder !== undefined) keepIn(folder, model);
    },
  };
}

function modelIn(
  folder: string,
  mark: string,
  template: Template,
  system: UnitSystem,
): Model | undefined {
  const kept = readKept(pathIn(folder, template, system), mark);
  if (kept === undefined) return undefined;
  return withMadeCode(unpacked(kept.model, template, system), kept);
}

/** Without a place to keep it, or where it cannot be packed, the model is compiled each time. */
function keepIn(folder: string, model: Model): void {
  try {
    put(folder, model);
  } catch {
    // a cache that cannot be written is none
  }
}

/** Keeps a compiled model in a folder. Throws where it cannot be kept. */
export function put(folder: string, model: Model): void {
  const { template, system } = model;
  const mark = markOf(template, system);
  if (mark === undefined) {
    throw new Error(`Template ${template.name} holds what no file can keep.`);
  }
  writeKept(pathIn(folder, template, system), mark, packed(model));
}
