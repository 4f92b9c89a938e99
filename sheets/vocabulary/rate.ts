/** A formula for a rate, as a number in the unit that the bid needs it in. */
export const rate = (code: string): string => `PICK(used_rates.value,used_rates.code,"${code}")`;
