import { join } from "node:path";
import { markOf } from "../engine/stored/mark.js";
import { storeIn } from "../engine/stored/store.js";
import { type ModelStore, useStore } from "../engine/template/models.js";
import { keptIn, sweep } from "./support/out-cache.js";

// What the process before compiled serves this one: a template of the trade takes some seconds. A kept model counts
// only under its mark, a digest of the engine's sources and of all that the template declares; that it is equal to
// a fresh one is held by test/engine/stored. Tests of the compiler call `compile`, which looks nowhere.

/** Small templates of the tests are sooner compiled than read. */
const large = /^(waterfall|bubbling-stones|learned-rates-\d+)$/;

const folder = keptIn("models");

/** A folder for each mark: a template that a test changed keeps the name of the one that it is made from. */
const folderOf = (mark: string) => join(folder, mark.slice(0, 16));

const markFor: typeof markOf = (template, system) =>
  large.test(template.name) ? markOf(template, system) : undefined;

const inFolders: ModelStore = {
  find: (template, system) => {
    const mark = markFor(template, system);
    return mark === undefined ? undefined : storeIn([folderOf(mark)]).find(template, system);
  },
  keep: (model) => {
    const mark = markFor(model.template, model.system);
    if (mark === undefined) return;
    sweep(folder);
    storeIn([folderOf(mark)]).keep(model);
  },
};

useStore(inFolders);
