import { production, withMachine } from "./rates.js";

/** Gravel by the load, for whichever part has it raked. */
export const gravelRaked = withMachine(
  production("gravel-raked", "Dump and rake gravel", "ton", 1.6),
  0.4,
  production("gravel-raked-hand", "Barrow, dump and rake gravel", "ton", 0.9),
);
