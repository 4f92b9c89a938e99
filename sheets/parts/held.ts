/** Protections of a dig that hold its sides. */
export const held = ["shored or shielded", "engineered"];
