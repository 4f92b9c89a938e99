import type { DocumentProperties } from "./content.js";
import { coreProperties, customProperties } from "./namespaces.js";
import type { Package } from "./package.js";
import { damaged } from "./refused.js";
import type { Relationship } from "./relationships.js";
import { unescaped } from "./text.js";

const coreNames: Readonly<Record<string, Exclude<keyof DocumentProperties, "custom">>> = {
  "coreProperties/creator": "creator",
  "coreProperties/lastModifiedBy": "lastModifiedBy",
  "coreProperties/created": "created",
  "coreProperties/modified": "modified",
};

/** Reads who made the workbook and when, and its custom properties as text (ISO/IEC 29500-1 §22.3). */
export function readProperties(
  from: Package,
  packageLinks: readonly Relationship[],
): DocumentProperties {
  const partOf = (...types: string[]) =>
    packageLinks.find(({ type, target }) => target !== undefined && types.includes(type))?.target;
  const core = partOf("core-properties");
  const custom = partOf("custom-properties", "customProperties");
  return {
    ...(core === undefined ? {} : readCore(from, core)),
    custom: custom === undefined ? new Map() : readCustom(from, custom),
  };
}

function readCore(from: Package, part: string): Omit<DocumentProperties, "custom"> {
  const found: { -readonly [name in keyof Omit<DocumentProperties, "custom">]: string } = {};
  from.walk(part, {
    namespaces: coreProperties,
    root: "coreProperties",
    text(path, piece) {
      const name = Object.hasOwn(coreNames, path) ? coreNames[path] : undefined;
      if (name !== undefined) found[name] = (found[name] ?? "") + piece;
    },
  });
  return found;
}

function readCustom(from: Package, part: string): Map<string, string> {
  const found = new Map<string, string>();
  let name = "";
  from.walk(part, {
    namespaces: customProperties,
    root: "Properties",
    open(path, attributes) {
      if (path !== "Properties/property") return;
      name = attributes.name?.value ?? "";
      if (found.has(name)) throw damaged(`The custom property ${JSON.stringify(name)} comes twice`);
      found.set(name, "");
    },
    text(path, piece) {
      // Any simple type (lpwstr, bool, i4, filetime ...) is one element with text.
      if (path.startsWith("Properties/property/") && path.split("/").length === 3) {
        found.set(name, found.get(name) + piece);
      }
    },
    close(path) {
      if (path === "Properties/property") found.set(name, unescaped(found.get(name) ?? ""));
    },
  });
  return found;
}
