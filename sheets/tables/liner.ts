/** Rolls of liner as suppliers usually stock them, in feet; replace them by the supplier's own. */
export const stockedRolls = [
  { width: 10, roll_length: 100, whole_rolls: false },
  { width: 15, roll_length: 100, whole_rolls: false },
  { width: 20, roll_length: 100, whole_rolls: false },
  { width: 25, roll_length: 100, whole_rolls: false },
  { width: 30, roll_length: 100, whole_rolls: false },
] as const;
