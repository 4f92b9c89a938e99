import { contentTypes } from "./namespaces.js";
import { damaged } from "./refused.js";
import type { Parts } from "./xml.js";

/** Reads [Content_Types].xml (ISO/IEC 29500-2, content types stream) as a function from a part's name to its type. */
export function readContentTypes(from: Parts): (part: string) => string | undefined {
  const byExtension = new Map<string, string>();
  const byPart = new Map<string, string>();
  from.walk("[Content_Types].xml", {
    namespaces: contentTypes,
    root: "Types",
    open(path, attributes) {
      if (path === "Types") return;
      const type = attributes.ContentType?.value;
      const key = (attributes.PartName ?? attributes.Extension)?.value.toLowerCase();
      if (type === undefined || key === undefined) {
        throw damaged(
          "The list of content types in the workbook has an entry without name or type",
        );
      }
      if (path === "Types/Override") byPart.set(key.replace(/^\//, ""), type);
      if (path === "Types/Default") byExtension.set(key, type);
    },
  });
  return (part) => {
    const key = part.toLowerCase();
    return byPart.get(key) ?? byExtension.get(key.slice(key.lastIndexOf(".") + 1));
  };
}
