import type { OpenedJob } from "../audit/index.js";
import { inputOrigins } from "../job/trail/origin.js";
import type { Origin } from "./node.js";
import type { Origins } from "./origin.js";

/** What of a job tells where its values come from. */
export type Told = Pick<OpenedJob, "model" | "values" | "trail" | "book">;

/** The origins of a job's inputs, by its trail. */
export function originsOf({ model, values, trail, book }: Told): Origins {
  const found = inputOrigins(model, values, trail);
  return {
    book,
    input: (cell): Origin => {
      const { from, by, time, note } = found.get(cell.id) ?? { from: "not in the trail" };
      const when = time?.slice(0, 10);
      const who = [by === undefined ? "" : `by ${by}`, when ?? ""].filter((part) => part !== "");
      const text = [from, ...who].join(", ");
      if (from === "template default") return { kind: "default", text };
      if (from === "not in the trail") return { kind: "untold", text };
      return {
        kind: "trail",
        text: note === undefined ? text : `${text}: ${note}`,
        from,
        ...(by === undefined ? {} : { by }),
        ...(time === undefined ? {} : { at: time }),
        ...(note === undefined ? {} : { note }),
      };
    },
  };
}
