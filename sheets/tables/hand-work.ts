/** Between which figures others have measured or published a rate, and who: in cubic yards an hour of one person. */
export interface Band {
  readonly least: number;
  readonly most: number;
  readonly source: string;
}

/** One cubic meter in cubic yards. */
const yards = 1 / 0.764554857984;

/** Cubic yards an hour from hours for a cubic meter, and from cubic meters in a day of eight hours. */
const fromHours = (hours: number) => yards / hours;
const fromDays = (meters: number) => (meters * yards) / 8;

const academy = "labor factors of a builders' academy (excavation)";
const norms = "ILO/ASIST Technical Brief 2, 1998 (from memory)";
const both = `${academy}; ${norms}`;

const band = (source: string, ...rates: readonly number[]): Band => ({
  least: Math.min(...rates),
  most: Math.max(...rates),
  source,
});

/** Hand digging by how hard the ground is, in place. The two sources differ by up to half. */
export const handDigging = {
  soft: band(both, fromHours(1.2), fromDays(5)),
  common: band(both, fromHours(2.2), fromDays(3.5)),
  hard: band(both, fromHours(3.3), fromDays(3), fromDays(2)),
  rock: band(norms, fromDays(0.8)),
} as const;

/** Wheeling, with loading, tipping and spreading, at three distances in feet. */
export const wheeling: readonly { readonly feet: number; readonly band: Band }[] = [
  { feet: 10 / 0.3048, band: band(norms, fromDays(8.5)) },
  { feet: 30 / 0.3048, band: band(both, fromDays(7), fromHours(1.25)) },
  { feet: 50 / 0.3048, band: band(both, fromDays(6.5), fromHours(1.25)) },
  { feet: 90 / 0.3048, band: band(norms, fromDays(5)) },
];

/** Backfilling and compacting by hand, as filled: one source of 1.0 h/m³, half as much either way as sources differ. */
export const handFilling = band(academy, fromHours(1.5), fromHours(1 / 1.5));

/** Loading a truck by hand, loose dirt: sand, medium, heavy soil. */
export const handLoading = band(academy, fromHours(1.0), fromHours(1.9));
