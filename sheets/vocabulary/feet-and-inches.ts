import { type InputDeclaration, quantity, walk } from "../../engine/template/index.js";

/** Inches beside feet; in SI, centimeters beside meters. */
export const inchesBeside = quantity("small length beside a length", "in", 2, 1, { si: "cm" });

/**
 * What a person adds to a length on the walk: feet stand in the column before, inches in this one.
 * The length that counts is the sum of both.
 */
export const plusInches = (label: string): InputDeclaration =>
  walk(inchesBeside, `${label}, plus`, {
    optional: true,
    least: 0,
    note: "‹Inches beside the feet|Centimeters beside the meters›, added to them.",
  });
