/** Steepest slopes for digs under 20 ft, as horizontal run to 1 of height. */
export const excavationSlopes = [
  { name: "not classified", run: 1.5, origin: "29 CFR 1926.652(b)(1)(i): 34 degrees" },
  { name: "stable rock", run: 0, origin: "29 CFR 1926 Subpart P App. B, Table B-1: vertical" },
  { name: "type A", run: 0.75, origin: "Table B-1: 53 degrees" },
  { name: "type B", run: 1, origin: "Table B-1: 45 degrees" },
  { name: "type C", run: 1.5, origin: "Table B-1: 34 degrees" },
] as const;
