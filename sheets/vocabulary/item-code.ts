import { type InputDeclaration, office, text } from "../../engine/template/index.js";

/**
 * An input that holds the code of an item: what the office book says of that item goes into the bid.
 * The office's own affair, unless `asked` says otherwise.
 */
export const itemCode = (
  label: string,
  rest: Partial<Pick<InputDeclaration, "again" | "asked" | "default" | "optional" | "note">> = {},
): InputDeclaration => office(text, label, { ...rest, codeOf: "items" });
