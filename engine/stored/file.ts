import { createHash, randomUUID } from "node:crypto";
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type { FunctionList } from "../template/made-code.js";
import type { Template } from "../template/template.js";
import type { UnitSystem } from "../units/quantity.js";
import type { Packed, PackedModel } from "./pack.js";

/**
 * A kept model is a file of lines: its mark, a digest of what follows, then model, functions and
 * validator, each as JSON in ASCII. What is not asked for is not parsed.
 */
export interface KeptFile {
  readonly model: PackedModel;
  readonly functions: () => FunctionList;
  readonly validator: () => string;
}

export const pathIn = (folder: string, { name, version }: Template, system: UnitSystem): string =>
  join(folder, `${name}-${version}.${system}.jsonl`);

/** Puts a packed model in its place, whole or not at all. Throws where the folder cannot be written. */
export function writeKept(path: string, mark: string, packed: Packed): void {
  const { model, functions, validator } = packed;
  const content = [model, functions, validator].map(ascii).join("\n");
  mkdirSync(dirname(path), { recursive: true });
  const part = `${path}.${randomUUID()}.part`;
  try {
    writeFileSync(part, `${mark}\n${digest(content)}\n${content}`, "latin1");
    renameSync(part, path);
  } finally {
    rmSync(part, { force: true });
  }
}

/** What is kept under this mark; undefined where there is nothing, or it is of another mark or damaged. */
export function readKept(path: string, mark: string): KeptFile | undefined {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch {
    return undefined;
  }
  const head = `${mark}\n`;
  if (bytes.toString("latin1", 0, head.length) !== head) return undefined;
  const begin = bytes.indexOf("\n", head.length) + 1;
  const content = bytes.subarray(begin);
  if (bytes.toString("latin1", head.length, begin - 1) !== digest(content)) return undefined;
  // in one byte a letter, which is parsed fastest
  const lines = content.toString("latin1").split("\n") as [string, string, string];
  return {
    model: JSON.parse(lines[0]),
    functions: () => JSON.parse(lines[1]),
    validator: () => JSON.parse(lines[2]),
  };
}

const digest = (content: string | Buffer): string =>
  createHash("sha256").update(content).digest("hex");

const ascii = (value: unknown): string =>
  JSON.stringify(value).replace(
    /[\u0080-\uffff]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
