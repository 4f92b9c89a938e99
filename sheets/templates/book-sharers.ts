import type { Template } from "../../engine/template/index.js";
import { bookOf } from "../parts/assemble.js";
import { bubblingParts } from "./bubbling-parts.js";
import { waterfallParts } from "./waterfall-parts.js";

let made: ReturnType<NonNullable<Template["sharesBook"]>> | undefined;

/** What each template asks of an office book: one book serves them all. */
export function bookSharers() {
  made ??= [bookOf("waterfall", waterfallParts), bookOf("bubbling-stones", bubblingParts)];
  return made;
}
