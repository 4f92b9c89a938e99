/**
 * How many of each a bid can hold. Every table, loop and limit reads it here; a table that stands
 * beside another takes that one's rows. To hold more, change the number: nothing else counts them.
 */
export const capacity = {
  /** Also the levels, since each fall may have its own. */
  falls: 12,
  runs: 12,
  pools: 6,
  /** Pots, urns and bowls. */
  pots: 3,
  /** Lines of pipe from the manifold. */
  lines: 8,
  pumps: 24,
  /** Points of a pump's curve. */
  curvePoints: 8,
  rolls: 6,
  /** Kinds of stone that are bought, and places that they go to. */
  stones: 8,
  stonePlaces: 16,
  /** Places of the office book. */
  places: 12,
  /** Machines of the office book. */
  machines: 6,
  /** Points of a machine's lifting chart. */
  liftingPoints: 5,
  berms: 4,
  trees: 6,
  walls: 4,
  additionalTasks: 6,
  additionalItems: 8,
  jobQuotes: 6,
  taxClasses: 4,
  options: 6,
  draws: 6,
  subcontracts: 6,
  risks: 6,
  /** Rows of the office book that a bid carries. */
  items: 88,
  rates: 120,
} as const;
