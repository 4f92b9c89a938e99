import { mkdirSync, readdirSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { markOf } from "../engine/stored/mark.js";
import { storeIn } from "../engine/stored/store.js";
import { type ModelStore, useStore } from "../engine/template/models.js";

// What the process before compiled serves this one: a template of the trade takes some seconds. A kept model counts
// only under its mark, a digest of the engine's sources and of all that the template declares; that it is equal to
// a fresh one is held by test/engine/stored. Tests of the compiler call `compile`, which looks nowhere.

/** Small templates of the tests are sooner compiled than read. */
const large = /^(waterfall|bubbling-stones|learned-rates-\d+)$/;

const folder = fileURLToPath(new URL("../out/cache/models", import.meta.url));

/** A folder for each mark: a template that a test changed keeps the name of the one that it is made from. */
const folderOf = (mark: string) => join(folder, mark.slice(0, 16));

const inFolders: ModelStore = {
  find: (template, system) => {
    const mark = large.test(template.name) ? markOf(template, system) : undefined;
    return mark === undefined ? undefined : storeIn([folderOf(mark)]).find(template, system);
  },
  keep: (model) => {
    const { template, system } = model;
    const mark = large.test(template.name) ? markOf(template, system) : undefined;
    if (mark === undefined) return;
    removeOld();
    storeIn([folderOf(mark)]).keep(model);
  },
};

/** Folders that nobody wrote into for a day are of sources that are gone. */
function removeOld(): void {
  mkdirSync(folder, { recursive: true });
  const before = Date.now() - 24 * 60 * 60 * 1000;
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    const stat = statSync(path, { throwIfNoEntry: false });
    if (stat !== undefined && stat.mtimeMs < before) rmSync(path, { recursive: true, force: true });
  }
}

useStore(inFolders);
