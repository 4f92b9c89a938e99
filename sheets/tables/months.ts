/** Months with their lengths (February with its leap days) and rain days to start from. */
export const monthsOfRain = [
  ["January", 31],
  ["February", 28.25],
  ["March", 31],
  ["April", 30],
  ["May", 31],
  ["June", 30],
  ["July", 31],
  ["August", 31],
  ["September", 30],
  ["October", 31],
  ["November", 30],
  ["December", 31],
].map(([name, length]) => ({ name, length, rain_days: 10 })) as readonly {
  name: string;
  length: number;
  rain_days: number;
}[];
