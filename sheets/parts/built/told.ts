/** Whether a thing is told, 1 or 0 in sums, and a word for whoever fills the sheet in. */
export const toldOrNot = { working: true, zero: "no", beyond: { from: 1, says: "yes" } } as const;
