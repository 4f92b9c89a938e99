import * as face from "../../engine/index.js";

const AsyncFunction = (async () => {}).constructor as new (
  ...texts: string[]
) => (face: unknown, console: unknown) => Promise<unknown>;

/** Runs an example as whoever imports the package would; what it asserts by `console.assert` must hold. */
export async function runExample(text: string): Promise<void> {
  const body = text
    .replace(/import \* as (\w+) from "rillbook";/g, "const $1 = face;")
    .replace(/import (\{[^}]*\}) from "rillbook";/g, "const $1 = face;");
  const own = { assert: mustHold, log: () => {} };
  await new AsyncFunction("face", "console", body)(face, own);
}

function mustHold(holds: unknown): void {
  if (!holds) throw new Error("An assertion of the example does not hold.");
}
