import { type Taken, takenLine, takenText } from "../text/taken.js";

/** A value of a record lies no deeper: inputs, table, row, column. */
const deepest = 4;
const oneLine = new Set(["job", "office"]);

/** What is wrong with a text of a record, by the place that JSON pointers name. */
export interface TextFault {
  readonly pointer: string;
  readonly sentence: string;
}

/**
 * A parsed record with its texts as they are kept. The guide is for people and stays. The trail must
 * be right already: its hashes stand for its texts as they are written.
 */
export function withTakenTexts(record: unknown): { record: unknown; faults: TextFault[] } {
  const faults: TextFault[] = [];
  const taken = (value: unknown, pointer: string, depth: number, take: Take): unknown => {
    if (typeof value === "string") {
      const result = take(value);
      if ("text" in result) return result.text;
      faults.push({ pointer, sentence: result.trouble });
      return value;
    }
    if (typeof value !== "object" || value === null || depth > deepest) return value;
    const entries = Object.entries(value);
    // most of a record is numbers
    const isPlain = (one: unknown) => typeof one !== "string" && typeof one !== "object";
    const changed = new Map<string, unknown>();
    for (const [key, one] of entries) {
      if (isPlain(one) || (depth === 0 && key === "guide")) continue;
      const now = taken(one, `${pointer}/${key}`, depth + 1, takeFor(take, depth, key));
      if (now !== one) changed.set(key, now);
    }
    if (changed.size === 0) return value;
    if (Array.isArray(value)) return value.map((one, i) => changed.get(String(i)) ?? one);
    return Object.fromEntries(entries.map(([key, one]) => [key, changed.get(key) ?? one]));
  };
  return { record: taken(record, "", 0, takenText), faults };
}

type Take = (text: string) => Taken;

function takeFor(take: Take, depth: number, key: string): Take {
  if (depth > 0) return take;
  return key === "trail" ? asItIs : oneLine.has(key) ? takenLine : take;
}

function asItIs(text: string): Taken {
  const taken = takenText(text);
  if ("trouble" in taken || taken.text === text) return taken;
  return {
    trouble:
      "holds the end of a line as CR, which no workbook keeps. Go back to a copy of the file whose trail holds.",
  };
}
