import { decoded } from "./plain-xml.js";

const attribute = / ([A-Za-z0-9:]+)="([^"]*)"/g;

/** The attributes of an element as they are written in it, by name. Undefined where one comes twice. */
export function attributesIn(written: string): Map<string, string> | undefined {
  const found = new Map<string, string>();
  let count = 0;
  for (const [, name, value] of written.matchAll(attribute)) {
    found.set(name as string, decoded(value as string));
    count += 1;
  }
  return count === found.size ? found : undefined;
}
