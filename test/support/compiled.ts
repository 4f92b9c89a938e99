import { mkdtemp, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { rolldown } from "rolldown";

const root = fileURLToPath(new URL("../..", import.meta.url));

/**
 * Compiles some files of the repository to a new folder in which processes of their own can run them. Returns the
 * folder; paths of these files in it are as in the repository, and all that they import lies in a few more, as in the
 * program as built: a process that a test starts would open some hundreds otherwise. Types are checked elsewhere.
 */
export async function compiled(...files: string[]): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), "rillbook-compiled-"));
  await symlink(join(root, "node_modules"), join(folder, "node_modules"));
  await writeFile(join(folder, "package.json"), '{"type":"module"}');
  const bundle = await rolldown({
    cwd: root,
    input: Object.fromEntries(files.map((file) => [file.replace(/\.ts$/, ""), file])),
    platform: "node",
    checks: { ineffectiveDynamicImport: false },
    // libraries stay in their packages
    external: /^[^./]/,
  });
  try {
    // shared files lie as deep as the rooms: paths relative to a source hold there, where they go by the name of a room
    await bundle.write({
      dir: folder,
      entryFileNames: "[name].js",
      chunkFileNames: "engine/shared/[name].js",
    });
  } finally {
    await bundle.close();
  }
  return folder;
}
