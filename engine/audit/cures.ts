import { basename, dirname, join } from "node:path";
import type { Finding } from "./finding.js";

const command = (workbook: string, written: string): string =>
  `rillbook bid ${workbook} -o ${written}`;

/** As it is told until the path of the workbook is known. */
const anyBid = command("bid.xlsx", "bid-again.xlsx");

/** What to do where a person has the workbook alone; within a sentence. */
export const orWriteAgain = `or write the bid again, which keeps its inputs: ${anyBid}`;

/** The same as a sentence. */
export const writeAgain = `Write the bid again, which keeps its inputs: ${anyBid}`;

const changes = (workbook: string, record: string): string =>
  `rillbook take ${workbook} -o ${record}, then rillbook set ${record} name=value --by "Who says so" --from "measured on site"`;
const anyChanges = changes("bid.xlsx", "bid.json");

/** How an input of a workbook gets an entry in the trail: no command changes a workbook's own. */
export const saySo = `Where the job is known better, say so in its record: ${anyChanges}`;

/** The findings with the commands as they are typed for the workbook of this path. */
export function withPath(findings: readonly Finding[], path: string): Finding[] {
  const name = basename(path).replace(/\.[^.]*$/, "");
  const beside = (ending: string) => asTyped(join(dirname(path), name + ending));
  const bid = command(asTyped(path), beside("-again.xlsx"));
  const set = changes(asTyped(path), beside(".json"));
  return findings.map((one) => ({
    ...one,
    advice: one.advice.replaceAll(anyBid, () => bid).replaceAll(anyChanges, () => set),
  }));
}

/** In quotes where a shell would take it apart. */
const asTyped = (path: string): string => (/^[\w./:\\~-]+$/.test(path) ? path : `"${path}"`);
