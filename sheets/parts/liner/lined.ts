/** What is lined: a water course with its basin, or a basin alone. */
export type Lined = "course" | "basin";
