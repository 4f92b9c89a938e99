/**
 * Swell from bank to loose, shrink from bank to compacted, as shares of the bank volume.
 * A negative shrink means that the compacted fill takes more room than the bank did.
 */
export const soils = [
  {
    name: "common earth",
    swell: 0.25,
    shrink: 0.1,
    bank_density: 100,
    origin: "Army FM 5-434 Table 1-1 (from memory): 1 bank, 1.25 loose, 0.90 compacted",
  },
  {
    name: "sand",
    swell: 0.11,
    shrink: 0.05,
    bank_density: 100,
    origin: "Army FM 5-434 Table 1-1: 1 bank, 1.11 loose, 0.95 compacted",
  },
  {
    name: "clay",
    swell: 0.43,
    shrink: 0.1,
    bank_density: 100,
    origin: "Army FM 5-434 Table 1-1 (from memory): 1 bank, 1.43 loose, 0.90 compacted",
  },
  {
    name: "blasted rock",
    swell: 0.5,
    shrink: -0.3,
    bank_density: 150,
    origin: "Army FM 5-434 Table 1-1 (from memory): 1 bank, 1.50 loose, 1.30 compacted",
  },
] as const;
