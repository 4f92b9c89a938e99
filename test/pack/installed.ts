import { createHash, randomUUID } from "node:crypto";
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { repository } from "../house/repository.js";
import { keptIn, sweep } from "../support/out-cache.js";

type Run = (program: string, args: readonly string[], cwd?: string) => string;

/** Paths below a folder, with forward slashes. */
export const filesBelow = (path: string) =>
  readdirSync(path, { recursive: true, encoding: "utf8" }).map((f) => f.replaceAll("\\", "/"));

const own = ["package.json", "package-lock.json", "tsconfig.json"];

/** Is all that `npm run build` makes younger than what it is made from? Models are its last step. */
function isBuilt(): boolean {
  const timeOf = (paths: readonly string[], from: typeof Math.max) =>
    from(...paths.map((path) => statSync(path).mtimeMs));
  const within = (name: string) =>
    filesBelow(join(repository, name)).map((path) => join(repository, name, path));
  const models = existsSync(join(repository, "dist/models")) ? within("dist/models") : [];
  const sources = [...within("engine"), ...within("sheets")];
  const others = own.map((file) => join(repository, file));
  return models.length > 0 && timeOf(models, Math.min) > timeOf([...sources, ...others], Math.max);
}

/** A digest of all that can get into the package, and of the versions of what it depends on. */
function markOfPackage(): string {
  const hash = createHash("sha256");
  const below = (room: string) =>
    filesBelow(join(repository, room))
      .sort()
      .map((file) => `${room}/${file}`);
  for (const name of [...own, "README.md", "LICENSE", ...below("dist"), ...below("engine/api")]) {
    const path = join(repository, name);
    if (statSync(path).isDirectory()) continue;
    const content = readFileSync(path);
    hash.update(`${name} ${content.length} `).update(content);
  }
  return hash.digest("hex").slice(0, 24);
}

/**
 * Packs the repository and installs that package in a folder which has nothing else. What a day's first run installed
 * serves those after it, as long as the package is the same: under which release of Node npm unpacks files changes none
 * of them, and what a release could change is how the package runs.
 */
export function installed(folder: string, run: Run): void {
  // packing builds first, which an installation from a clone has just done
  if (!isBuilt()) run("npm", ["run", "prepare"], repository);
  const all = keptIn("installed");
  const kept = join(all, markOfPackage());
  if (!existsSync(kept)) {
    sweep(all);
    const part = `${kept}.${randomUUID()}.part`;
    mkdirSync(part);
    run("npm", ["pack", "--ignore-scripts", "--pack-destination", part], repository);
    const [tarball] = readdirSync(part);
    writeFileSync(join(part, "package.json"), '{ "private": true }\n');
    run("npm", ["install", "--prefer-offline", `./${tarball}`], part);
    if (existsSync(kept)) rmSync(part, { recursive: true });
    else renameSync(part, kept);
  }
  run("cp", ["-R", `${kept}/.`, folder], repository);
}
