import { attribute, head } from "./text.js";

const space = "http://schemas.openxmlformats.org/package/2006/relationships";

/** Types of relations that begin alike (ISO/IEC 29500-1, 8.5). */
export const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** A link from one part to another: its id, its type, and where it leads. */
export interface Link {
  readonly id: string;
  readonly type: string;
  readonly target: string;
}

/** One relation of a list. */
export const linkXml = ({ id, type, target }: Link): string =>
  `<Relationship Id="${id}" Type="${type}" Target="${attribute(target)}"/>`;

/** A list of relations (ISO/IEC 29500-2, 9.3). */
export const linksXml = (links: readonly Link[]): string =>
  `${head}<Relationships xmlns="${space}">${links.map(linkXml).join("")}</Relationships>`;

/** Where the relations of a part stand. */
export const linksOf = (part: string): string => part.replace(/([^/]*)$/, "_rels/$1.rels");
