import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { cacheFolder } from "../../../engine/stored/folders.js";
import type { Template } from "../../../engine/template/index.js";
import { modelOf } from "../../../engine/template/models.js";
import { inFolder, pathIn, put, storeIn } from "../../support/stored.js";
import { toy } from "../../support/toy.js";

const model = modelOf(toy, "us");
const path = (folder: string) => pathIn(folder, toy, "us");

test("what is kept is found again, in whichever folder it lies", () => {
  inFolder((folder) => {
    const store = storeIn([join(folder, "none"), join(folder, "cache")]);
    expect(store.find(toy, "us")).toBeUndefined();
    store.keep(model);
    expect(readdirSync(folder)).toEqual(["cache"]);
    expect(readdirSync(join(folder, "cache"))).toEqual([`${toy.name}-${toy.version}.us.model`]);
    expect(store.find(toy, "us")?.cells.length).toBe(model.cells.length);
    expect(store.find(toy, "si")).toBeUndefined();
  });
});

test("a template that was changed since does not find the old model", () => {
  inFolder((folder) => {
    put(folder, model);
    const changed: Template = { ...toy, title: "Another title" };
    expect(storeIn([folder]).find(changed, "us")).toBeUndefined();
  });
});

const damages: [string, (bytes: Buffer) => Buffer][] = [
  ["cut short", (bytes) => bytes.subarray(0, bytes.length - 1)],
  ["empty", () => Buffer.alloc(0)],
  ["of another mark", (bytes) => Buffer.concat([Buffer.from("0"), bytes.subarray(1)])],
  ["with another byte in its middle", (bytes) => changedAt(bytes, bytes.length >> 1)],
  ["with another byte near its end", (bytes) => changedAt(bytes, bytes.length - 9)],
  ["with another digest", (bytes) => changedAt(bytes, 70)],
];

function changedAt(bytes: Buffer, place: number): Buffer {
  const copy = Buffer.from(bytes);
  copy[place] = copy[place] === 0x31 ? 0x32 : 0x31;
  return copy;
}

test.each(damages)("a file %s is no model, and the next one kept mends it", (_, damaged) => {
  inFolder((folder) => {
    put(folder, model);
    const good = readFileSync(path(folder));
    writeFileSync(path(folder), damaged(good));
    const store = storeIn([folder]);
    expect(store.find(toy, "us")).toBeUndefined();
    store.keep(model);
    expect(readFileSync(path(folder))).toEqual(good);
  });
});

test("a folder that cannot be written keeps nothing, and nothing fails", () => {
  inFolder((folder) => {
    const file = join(folder, "file");
    writeFileSync(file, "");
    storeIn([join(file, "below")]).keep(model);
    expect(existsSync(join(file, "below"))).toBe(false);
  });
});

test.each<[string, NodeJS.ProcessEnv, NodeJS.Platform, RegExp]>([
  ["XDG_CACHE_HOME", { XDG_CACHE_HOME: "/x" }, "linux", /^.x.rillbook$/],
  ["nothing told", {}, "linux", /\.cache.rillbook$/],
  ["macOS", {}, "darwin", /Library.Caches.rillbook$/],
  ["Windows", { LOCALAPPDATA: "/l" }, "win32", /^.l.rillbook$/],
])("the cache folder by %s", (_, env, platform, folder) => {
  expect(cacheFolder(env, platform)).toMatch(folder);
});
