import { packageRelationships } from "./namespaces.js";
import { damaged } from "./refused.js";
import type { Parts } from "./xml.js";

export interface Relationship {
  readonly id: string;
  /** Last step of the type's address ("worksheet"), equal in strict and transitional files. */
  readonly type: string;
  /** Name of the part pointed to; undefined when it lies outside the workbook. */
  readonly target: string | undefined;
}

/** The part that holds the relationships of a part: xl/workbook.xml has xl/_rels/workbook.xml.rels. */
export function relationshipsPartOf(part: string): string {
  const slash = part.lastIndexOf("/") + 1;
  return `${part.slice(0, slash)}_rels/${part.slice(slash)}.rels`;
}

/** Reads the relationships of a part (ISO/IEC 29500-2, relationships). */
export function readRelationships(from: Parts, part: string): Relationship[] {
  const found: Relationship[] = [];
  const ids = new Set<string>();
  const relationshipsPart = relationshipsPartOf(part);
  from.walk(relationshipsPart, {
    namespaces: packageRelationships,
    root: "Relationships",
    open(path, attributes) {
      if (path !== "Relationships/Relationship") return;
      const id = attributes.Id?.value;
      const type = attributes.Type?.value;
      const target = attributes.Target?.value;
      if (id === undefined || type === undefined || target === undefined || ids.has(id)) {
        throw damaged(
          `${relationshipsPart} has an entry with a repeated Id or without Type or Target`,
        );
      }
      ids.add(id);
      found.push({
        id,
        type: type.slice(type.lastIndexOf("/") + 1),
        target: attributes.TargetMode?.value === "External" ? undefined : resolved(target, part),
      });
    },
  });
  return found;
}

/** A target is relative to the folder of its source, or to the package when it begins with "/". */
function resolved(target: string, part: string): string {
  const steps = target.startsWith("/") ? [] : part.split("/").slice(0, -1);
  for (const step of target.replace(/^\//, "").split("/")) {
    if (step === "..") {
      if (steps.pop() === undefined) {
        throw damaged(`The workbook points to ${JSON.stringify(target)}, outside itself`);
      }
    } else if (step !== ".") {
      steps.push(step);
    }
  }
  return steps.join("/");
}
