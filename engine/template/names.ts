import { natives } from "../formula/functions/index.js";
import { limits } from "../limits.js";

const shape = /^[a-z][a-z0-9]*(_[a-z0-9]+)*$/;
/** Read as an address by one program or another: `q1`, `abc12`, `r1c1`. */
const likeAddress = /^[a-z]{1,3}[0-9]+$|^r[0-9]*c[0-9]*$/;
const taken: ReadonlySet<string> = new Set(["r", "c", "true", "false", "above"]);

/** Why a name cannot be used in every program, or undefined where it can. */
export function nameTrouble(name: string): string | undefined {
  if (!shape.test(name)) return "use lower-case words joined by single underscores";
  if (likeAddress.test(name)) return "it reads like a cell address";
  if (/^[a-z]+[0-9]+$/.test(name)) return "letters followed by digits read like a cell address";
  if (taken.has(name)) return "it has a meaning of its own in spreadsheets";
  if (natives.has(name.toUpperCase())) return "it is the name of a function";
  if (name in Object.prototype) return "it is a name that JavaScript keeps for itself";
  if (name.length > limits.name) return `names have at most ${limits.name} characters`;
  return undefined;
}

const formulaShape = /^[A-Z][A-Z0-9]*(_[A-Z0-9]+)*$/;

/** Why a named formula cannot have this name, or undefined where it can. */
export function formulaNameTrouble(name: string): string | undefined {
  if (!formulaShape.test(name)) return "use upper-case words joined by single underscores";
  if (natives.has(name)) return "it is the name of a spreadsheet function";
  return undefined;
}

/** Why a sheet cannot have this name, or undefined where it can. */
export function sheetNameTrouble(name: string): string | undefined {
  if (name.length === 0 || name.length > limits.sheetName) {
    return `sheet names have 1 to ${limits.sheetName} characters`;
  }
  // from memory: one program keeps it for its list of changes
  if (name.toLowerCase() === "history") return "a spreadsheet program keeps this name for itself";
  if (/[':\\/?*[\]]/.test(name)) return "sheet names have none of ' : \\ / ? * [ ]";
  return undefined;
}
