import { headOf } from "../../job/trail/chain.js";
import type { Identity } from "./identity.js";

/** Whether a sheet goes to people outside the office, and whether its foot names the trail of the inputs. */
interface Kind {
  readonly handout: boolean;
  readonly namesTrail?: boolean | undefined;
}

/**
 * The foot of a page: job, sheet, page. A page that shows the office's own figures says so, since all of a workbook
 * prints in one run. A footer holds 255 characters, and an ampersand begins a code in it.
 */
export function footOf(identity: Identity, { handout, namesTrail = false }: Kind): string {
  const job = [...identity.job].slice(0, 100).join("").replaceAll("&", "&&");
  const { trail = [] } = identity;
  const known = namesTrail && trail.length > 0;
  const head = known ? `, trail ${headOf(trail).slice(0, 12)}` : "";
  // each sheet is numbered by itself: printed with the workbook, "of" would count all its pages
  return `&L&8Job ${job}${head}&C&8${handout ? "" : "Office only: "}&A&R&8Page &P`;
}
