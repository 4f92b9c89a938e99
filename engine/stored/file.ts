import { createHash, randomUUID } from "node:crypto";
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { deflateRawSync, inflateRawSync } from "node:zlib";
import type { FunctionList, ReadList } from "../template/made-code.js";
import type { Template } from "../template/template.js";
import type { UnitSystem } from "../units/quantity.js";
import type { Packed, PackedModel } from "./pack.js";

/**
 * A kept model is a file: a line with its mark, one with a digest of all that follows, one with the lengths of
 * its parts, then the parts, each deflated by itself: model, places of functions and what formulas read as JSON,
 * functions and validator as JavaScript, all in ASCII. What is not asked for is neither inflated nor parsed.
 */
export interface KeptFile {
  readonly model: PackedModel;
  readonly functions: () => FunctionList;
  readonly reads: () => ReadList;
  readonly validator: () => string;
}

export const pathIn = (folder: string, { name, version }: Template, system: UnitSystem): string =>
  join(folder, `${name}-${version}.${system}.model`);

/** Puts a packed model in its place, whole or not at all. Throws where the folder cannot be written. */
export function writeKept(path: string, mark: string, packed: Packed): void {
  const { model, functions, reads, validator } = packed;
  const { text, places } = functions;
  const lists = JSON.stringify(inSteps(reads));
  const texts = [JSON.stringify(model), JSON.stringify(places), text, validator, lists];
  const parts = texts.map((part) => deflateRawSync(Buffer.from(ascii(part), "latin1")));
  const lengths = Buffer.from(`${JSON.stringify(parts.map(({ length }) => length))}\n`);
  const content = Buffer.concat([lengths, ...parts]);
  mkdirSync(dirname(path), { recursive: true });
  const file = `${path}.${randomUUID()}.part`;
  try {
    writeFileSync(file, Buffer.concat([Buffer.from(`${mark}\n${digest(content)}\n`), content]));
    renameSync(file, path);
  } finally {
    rmSync(file, { force: true });
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
  const [model, places, text, validator, lists] = partsOf(content);
  return {
    model: JSON.parse(inflated(model)),
    functions: () => ({ text: inflated(text), places: JSON.parse(inflated(places)) }),
    reads: () => ofSteps(JSON.parse(inflated(lists))),
    validator: () => inflated(validator),
  };
}

type Parts = [model: Buffer, places: Buffer, text: Buffer, validator: Buffer, lists: Buffer];

function partsOf(content: Buffer): Parts {
  let end = content.indexOf("\n") + 1;
  const lengths = JSON.parse(content.toString("latin1", 0, end)) as number[];
  const parts = lengths.map((length) => {
    end += length;
    return content.subarray(end - length, end);
  });
  return parts as Parts;
}

/** In one byte a letter, which is parsed fastest. */
const inflated = (part: Buffer): string => inflateRawSync(part).toString("latin1");

const digest = (content: Buffer): string => createHash("sha256").update(content).digest("hex");

/** Letters beyond ASCII stand in texts only, in JSON and JavaScript alike, and are written as escapes. */
const ascii = (text: string): string =>
  text.replace(
    /[\u0080-\uffff]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );

/**
 * Nodes by how far they are from those of the formula before, place by place: a column's formulas read the same as the one
 * above, or the row below, so that next to nothing of them is left.
 */
const inSteps = (reads: ReadList): ReadList => ({ ...reads, nodes: walked(reads, -1) });

const ofSteps = (steps: ReadList): ReadList => ({ ...steps, nodes: walked(steps, 1) });

function walked({ counts, nodes }: ReadList, sign: 1 | -1): number[] {
  const made: number[] = [];
  const whole = sign === 1 ? made : nodes;
  let [before, at] = [0, 0];
  for (const count of counts) {
    for (let i = 0; i < count; i++) {
      const above = before + i < at ? (whole[before + i] as number) : 0;
      made.push((nodes[at + i] as number) + sign * above);
    }
    [before, at] = [at, at + count];
  }
  return made;
}
