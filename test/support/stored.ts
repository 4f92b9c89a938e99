import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathIn, readKept } from "../../engine/stored/file.js";
import { put, storeIn } from "../../engine/stored/store.js";
import type { Model } from "../../engine/template/model.js";

/** What `use` makes in a folder of its own, which is gone afterwards. */
export function inFolder<T>(use: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), "rillbook-stored-"));
  try {
    return use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const again = new WeakMap<Model, Model>();

/** A model as it comes back from a store, once a process. Throws where it does not. */
export function storedAgain(model: Model): Model {
  const known = again.get(model) ?? throughStore(model);
  again.set(model, known);
  return known;
}

function throughStore(model: Model): Model {
  return inFolder((folder) => {
    put(folder, model);
    const found = storeIn([folder]).find(model.template, model.system);
    if (found === undefined) throw new Error("The store does not find what was put into it.");
    return found;
  });
}

export { pathIn, put, readKept, storeIn };
