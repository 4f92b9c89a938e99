import { production } from "../rates.js";

/** Main and lines are laid at one rate. */
export const pipeLaid = production("pipe-laid", "Lay pipe", "ft", 22);
