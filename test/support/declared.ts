import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { repository } from "../house/repository.js";

/** One name that the package promises, as its type declarations have it. */
export interface Declared {
  readonly name: string;
  /** The file that declares it: `template/declare`. */
  readonly from: string;
  /** Its docstring, without the stars. */
  readonly says: string;
  readonly example?: string;
  /** The declaration, with the comments within; overloads one under another. */
  readonly code: string;
  readonly isType: boolean;
}

/**
 * Reads the type declarations that the compiler emits. The compiler's own interface for programs is
 * not promised in this version, and these files are written in one way: so a small reader is enough.
 */
export function declaredNames(): Declared[] {
  const folder = mkdtempSync(join(tmpdir(), "rillbook-declared-"));
  try {
    const tsc = join(repository, "node_modules/typescript/lib/tsc.js");
    const args = [tsc, "--emitDeclarationOnly", "--declaration", "--outDir", folder];
    execFileSync(process.execPath, args, { cwd: repository });
    const read = (file: string) => readFileSync(join(folder, "engine", `${file}.d.ts`), "utf8");
    return [
      ...read("index").matchAll(/^export (type )?\{([^}]*)\} from "\.\/(.*)\.js";/gm),
    ].flatMap(([, , list = "", from = ""]) =>
      list
        .split(",")
        .map((one) => one.trim().replace(/^type /, ""))
        .filter((name) => name !== "")
        .map((name) => declared(name, from, read(from))),
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function declared(name: string, from: string, text: string): Declared {
  const start = new RegExp(
    `(?:^/\\*\\*((?:(?!\\*/)[\\s\\S])*)\\*/\\n)?^export (?:declare )?(const|function|class|interface|type) ${name}\\b`,
    "gm",
  );
  const found = [...text.matchAll(start)];
  const [first] = found;
  if (first === undefined) throw new Error(`${from} does not declare ${name} itself.`);
  const [says = "", ...rest] = plain(first[1] ?? "").split(/^@example$/m);
  const code = found.map(({ 0: head, index }) => {
    const begin = index + head.lastIndexOf("export ");
    return text.slice(begin, endOf(text, begin)).replace(/^export (declare )?/, "");
  });
  return {
    name,
    from,
    says: says.trim(),
    ...(rest[0] === undefined ? {} : { example: rest[0].trim() }),
    code: code.join("\n").replaceAll("    ", "  "),
    isType: first[2] === "interface" || first[2] === "type",
  };
}

/** The words of a comment without its stars. */
const plain = (comment: string): string =>
  comment
    .split("\n")
    .map((line) => line.replace(/^\s*\*? ?/, ""))
    .join("\n")
    .trim();

/** Where the declaration that begins at `begin` ends: at a semicolon or the last brace outside of brackets. */
function endOf(text: string, begin: number): number {
  const block = /^export (?:declare )?(?:class|interface)/.test(text.slice(begin));
  let depth = 0;
  for (let at = begin; at < text.length; at++) {
    if (text.startsWith("/*", at)) at = text.indexOf("*/", at) + 1;
    else if ("({[".includes(text[at] as string)) depth++;
    else if (")}]".includes(text[at] as string)) {
      depth--;
      if (depth === 0 && block) return at + 1;
    } else if (text[at] === ";" && depth === 0) return at + 1;
  }
  return text.length;
}
