import { origins } from "./entry.js";

/** The most characters of a name or note: what fits a cell and a line of print. */
export const longestBy = 100;
export const longestNote = 1000;

/** A control character would break the XML of the workbook. */
const oneLine = "^[^\\u0000-\\u001f\\u007f]*$";
/** Blank is null: a sheet cannot tell an empty text from a blank cell. */
const value = { type: ["number", "string", "boolean", "null"], minLength: 1 };

/** The JSON Schema of one entry of the trail. */
export const entrySchema = {
  type: "object",
  required: ["number", "time", "by", "input", "old", "new", "unit", "from", "hash"],
  additionalProperties: false,
  properties: {
    number: { type: "integer", minimum: 1 },
    time: { type: "string", pattern: "^\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}\\.\\d{3}Z$" },
    by: { type: "string", minLength: 1, maxLength: longestBy, pattern: oneLine },
    input: { type: "string", minLength: 1, maxLength: 255 },
    old: value,
    new: value,
    unit: { type: "string", maxLength: 30 },
    // older trails call the office book so, and their hashes stand for the word
    from: { enum: [...origins, "price book"] },
    note: { type: "string", minLength: 1, maxLength: longestNote, pattern: oneLine },
    hash: { type: "string", pattern: "^[0-9a-f]{64}$" },
  },
} as const;
