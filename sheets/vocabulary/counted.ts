/** A formula for a count with its noun: 1 light, 4 lights. */
export const counted = (count: string, one: string, many: string): string =>
  `FIXED(${count},0)&IF(ROUND(${count},0)=1," ${one}"," ${many}")`;
