import { execFile } from "node:child_process";
import { mkdtemp, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

const root = fileURLToPath(new URL("../..", import.meta.url));

/**
 * Compiles some files of the repository, with all they import, to a new folder in which
 * processes of their own can run them. Returns the folder; paths in it are as in the repository.
 */
export async function compiled(...files: string[]): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), "rillbook-compiled-"));
  await symlink(join(root, "node_modules"), join(folder, "node_modules"));
  await writeFile(join(folder, "package.json"), '{"type":"module"}');
  const config = {
    extends: join(root, "tsconfig.json"),
    compilerOptions: {
      rootDir: root,
      outDir: folder,
      // types are checked for the whole repository
      noCheck: true,
      types: ["node"],
      typeRoots: [join(root, "node_modules/@types")],
    },
    include: [],
    files: files.map((file) => join(root, file)),
  };
  const path = join(folder, "tsconfig.json");
  await writeFile(path, JSON.stringify(config));
  await promisify(execFile)(process.execPath, [
    join(root, "node_modules/typescript/bin/tsc"),
    "-p",
    path,
  ]);
  return folder;
}
