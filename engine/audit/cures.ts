import { basename, dirname, join } from "node:path";
import type { Finding } from "./finding.js";

const command = (workbook: string, written: string): string =>
  `rillbook bid ${workbook} -o ${written}`;

/** As it is told until the path of the workbook is known. */
const anyBid = command("bid.xlsx", "bid-again.xlsx");

/** What to do where a person has the workbook alone. */
export const writeAgain = `Write the bid again, which keeps its inputs: ${anyBid}`;

/** The findings with the commands as they are typed for the workbook of this path. */
export function withPath(findings: readonly Finding[], path: string): Finding[] {
  const name = basename(path).replace(/\.[^.]*$/, "");
  const own = command(asTyped(path), asTyped(join(dirname(path), `${name}-again.xlsx`)));
  return findings.map((one) => ({ ...one, advice: one.advice.replace(anyBid, () => own) }));
}

/** In quotes where a shell would take it apart. */
const asTyped = (path: string): string => (/^[\w./:\\~-]+$/.test(path) ? path : `"${path}"`);
