import { closest, distance } from "fastest-levenshtein";

/** ` Did you mean "lift"?`, or nothing where no known name is near. */
export function suggestion(name: string, known: Iterable<string>): string {
  const all = [...known];
  if (all.length === 0) return "";
  const lower = name.toLowerCase();
  const near = closest(
    lower,
    all.map((one) => one.toLowerCase()),
  );
  const found = all.find((one) => one.toLowerCase() === near);
  const tolerated = Math.max(2, Math.floor(name.length / 3));
  if (found === undefined || distance(lower, near) > tolerated) return "";
  return ` Did you mean "${found}"?`;
}
