/**
 * Swell from bank to loose, shrink from bank to compacted, as shares of the bank volume.
 * Fill slope: the steepest, as run to 1 of height, that a bank built of it keeps by itself.
 * Digging: how hard it is to dig where nobody says otherwise: common practice, no source.
 * A negative shrink means that the compacted fill takes more room than the bank did.
 */
const grading = "2 to 1 without an engineer's report: IBC Appendix J (from memory)";

export const soils = [
  {
    name: "common earth",
    digging: "common",
    swell: 0.25,
    shrink: 0.1,
    density_in_place: 100,
    fill_run: 2,
    fill_origin: grading,
    origin: "Army FM 5-434 Table 1-1 (from memory): 1 bank, 1.25 loose, 0.90 compacted",
  },
  {
    name: "sand",
    digging: "soft",
    swell: 0.11,
    shrink: 0.05,
    density_in_place: 100,
    fill_run: 2,
    fill_origin: `${grading}; dry sand rests at 34 degrees, 1.5 to 1`,
    origin: "Army FM 5-434 Table 1-1: 1 bank, 1.11 loose, 0.95 compacted",
  },
  {
    name: "clay",
    digging: "hard",
    swell: 0.43,
    shrink: 0.1,
    density_in_place: 100,
    fill_run: 3,
    fill_origin: "wet clay rests at 15 degrees, dry lumps at 25 to 40; 3 to 1 is common practice, no source",
    origin: "Army FM 5-434 Table 1-1 (from memory): 1 bank, 1.43 loose, 0.90 compacted",
  },
  {
    name: "blasted rock",
    digging: "rock",
    swell: 0.5,
    shrink: -0.3,
    density_in_place: 150,
    fill_run: 1.5,
    fill_origin: "broken granite rests at 35 to 40 degrees, 1.4 to 1",
    origin: "Army FM 5-434 Table 1-1 (from memory): 1 bank, 1.50 loose, 1.30 compacted",
  },
] as const;
