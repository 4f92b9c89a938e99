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

/** Signs of units, and the words that people outside the office read in their place. */
const spelled: readonly (readonly [string, string])[] = [
  [" ft²", " square feet"],
  [" m²", " square meters"],
  [" yd³", " cubic yards"],
  [" m³", " cubic meters"],
  [" gal/h", " gallons an hour"],
  [" L/h", " liters an hour"],
  [" gal", " gallons"],
  [" gallonslons", " gallons"],
  [" h/day", " hours a day"],
  [" ton ", " tons "],
];

/** What is left over where the figure is a one. */
const singular: readonly (readonly [string, string])[] = [
  [" 1 tons", " 1 ton"],
  [" 1 days", " 1 day"],
  [" 1 people", " 1 person"],
  [" 1 loads", " 1 load"],
];

/** A formula that spells out the units within a text. */
export function unitsSpelled(text: string, kind: "customer" | "crew"): string {
  const pairs = kind === "customer" ? [...spelled, ...singular] : singular;
  return pairs.reduce((inner, [sign, word]) => `SUBSTITUTE(${inner},"${sign}","${word}")`, text);
}
