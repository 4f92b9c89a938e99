import { type InputDeclaration, input, text } from "../../engine/template/index.js";

/** An input that holds the code of an item: what the price book says of that item goes into the bid. */
export const itemCode = (
  label: string,
  rest: Partial<Pick<InputDeclaration, "default" | "optional" | "note">> = {},
): InputDeclaration => input(text, label, { ...rest, codeOf: "items" });
