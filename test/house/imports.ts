import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../../", import.meta.url));

/** One file's import of another, types too, by their paths in the repository. */
export interface Import {
  readonly from: string;
  readonly to: string;
}

/** The TypeScript files of some folders. */
export function sourcesIn(folders: readonly string[]): string[] {
  return folders.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
      .filter((file) => file.endsWith(".ts"))
      .map((file) => `${folder}/${file.replaceAll("\\", "/")}`),
  );
}

export const textOf = (file: string): string => readFileSync(join(root, file), "utf8");

/** What the files of some folders import or pass on of one another, packages left out. */
export function importsOf(folders: readonly string[]): Import[] {
  return sourcesIn(folders).flatMap((from) =>
    [...textOf(from).matchAll(/(?:from|import)\s*\(?\s*"(\.[^"]+)"/g)].map(([, to = ""]) => ({
      from,
      to: join(dirname(from), to).replaceAll("\\", "/").replace(/\.js$/, ".ts"),
    })),
  );
}

/** `formula`, `workbook/read`; `engine` for the files that stand in no room. */
export function roomOf(file: string): string {
  const [, room = "", inner = "", more] = file.split("/");
  if (room.endsWith(".ts")) return "engine";
  return room === "workbook" && more !== undefined ? `${room}/${inner}` : room;
}
