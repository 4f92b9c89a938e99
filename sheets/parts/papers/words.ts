/** Months as they are written out. */
const months = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** A formula for the name of the month with this number, 1 to 12. */
export const monthName = (number: string): string =>
  `CHOOSE(MAX(1,MIN(12,${number})),${months.map((month) => `"${month}"`).join(",")})`;

/**
 * A formula for a date written out: March 15, 2027. The year goes in two parts, since
 * FIXED would part its thousands, and TEXT() changes with the user's language.
 */
export function longDate(name: string): string {
  const year = `FIXED(INT(YEAR(${name})/100),0)&RIGHT("0"&FIXED(MOD(YEAR(${name}),100),0),2)`;
  return `${monthName(`MONTH(${name})`)}&" "&FIXED(DAY(${name}),0)&", "&${year}`;
}

/** A formula for a count with its noun: 1 light, 4 lights. */
export const counted = (count: string, one: string, many: string): string =>
  `FIXED(${count},0)&IF(ROUND(${count},0)=1," ${one}"," ${many}")`;
