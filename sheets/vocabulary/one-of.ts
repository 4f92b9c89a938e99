/** The choices of a cell in words, for who fills in the printed form: `one of sand, clay.` */
export const oneOf = (rows: readonly { readonly [column: string]: unknown }[] | undefined): string =>
  `one of ${(rows ?? []).map(({ name }) => name).join(", ")}.`;
