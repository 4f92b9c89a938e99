import { literalOf, piecesOf } from "./pieces.js";

/** Does a part of a format show days or times? */
export const isOfDates = (part: string): boolean => piecesOf(part).some((one) => isField.test(one));

const isField = /^(\[(?:h+|m+|s+)\]|y+|m+|d+|h+|s+)$/;
const isHours = /^\[?h/;

const months =
  "January February March April May June July August September October November December";
const days = "Sunday Monday Tuesday Wednesday Thursday Friday Saturday";
/** From day 0 of the programs to that of the clock. */
const daysBefore = 25569;
const secondsOfDay = 86_400;

/** A serial number as a part of a format shows it. */
export function dateSaid(part: string, serial: number): string {
  const at = new Date(Math.round((serial - daysBefore) * secondsOfDay) * 1000);
  if (serial < 0 || Number.isNaN(at.getTime())) return "####";
  const all = piecesOf(part);
  const fields = all.flatMap((one, i) => (isField.test(one) ? [i] : []));
  const half = all.some((one) => one.startsWith("a"));
  return all
    .map((piece, i) => {
      if (piece.startsWith("a")) return at.getUTCHours() < 12 ? "AM" : "PM";
      if (!isField.test(piece)) return literalOf(piece) ?? (piece[0] === "[" ? "" : piece);
      const before = all[fields[fields.indexOf(i) - 1] ?? -1] ?? "";
      const after = all[fields[fields.indexOf(i) + 1] ?? -1] ?? "";
      const ofTime = piece[0] === "m" && (isHours.test(before) || after[0] === "s");
      return fieldSaid(ofTime ? `time ${piece}` : piece, at, serial, half);
    })
    .join("");
}

function fieldSaid(field: string, at: Date, serial: number, half: boolean): string {
  const padded = (value: number) => String(value).padStart(Math.min(field.length, 2), "0");
  const named = (list: string, place: number) => {
    const name = list.split(" ")[place] as string;
    return field.length === 3 ? name.slice(0, 3) : field.length === 5 ? name.slice(0, 1) : name;
  };
  if (field.startsWith("time")) return String(at.getUTCMinutes()).padStart(2, "0");
  switch (field[0]) {
    case "y":
      return field.length > 2 ? String(at.getUTCFullYear()) : String(at.getUTCFullYear()).slice(-2);
    case "m":
      return field.length > 2 ? named(months, at.getUTCMonth()) : padded(at.getUTCMonth() + 1);
    case "d":
      return field.length > 2 ? named(days, at.getUTCDay()) : padded(at.getUTCDate());
    case "h":
      return padded(half ? at.getUTCHours() % 12 || 12 : at.getUTCHours());
    case "s":
      return padded(at.getUTCSeconds());
    default: {
      const inDay = field[1] === "h" ? 24 : field[1] === "m" ? 1440 : secondsOfDay;
      return String(Math.floor(serial * inDay));
    }
  }
}
