import { closest, distance } from "fastest-levenshtein";

/** ` Did you mean "lift"?`, or nothing where no known name is near. */
export function suggestion(name: string, known: Iterable<string>): string {
  const found = nearest(name, known);
  return found === undefined ? "" : ` Did you mean "${found}"?`;
}

/** The known name that is spelled most alike; undefined where none is near. */
export function nearest(name: string, known: Iterable<string>): string | undefined {
  const all = [...known];
  if (all.length === 0) return undefined;
  const lower = name.toLowerCase();
  const near = closest(
    lower,
    all.map((one) => one.toLowerCase()),
  );
  const found = all.find((one) => one.toLowerCase() === near);
  const tolerated = Math.max(2, Math.floor(name.length / 3));
  return found === undefined || distance(lower, near) > tolerated ? undefined : found;
}
