import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

/** The folder of this checkout, ending in a slash. */
export const repository = fileURLToPath(new URL("../../", import.meta.url));

/** The text of a file, named from the top of the checkout. */
export const textOf = (path: string): string => readFileSync(repository + path, "utf8");
