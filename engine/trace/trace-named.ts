import { originsOf, type Told } from "./job-origins.js";
import type { TraceNode } from "./node.js";
import { trace, traceColumn } from "./trace.js";

/** The trace of a cell or of a whole column, by its name; undefined where there is none of that name. */
export function traceNamed(job: Told, name: string, depth: number): TraceNode | undefined {
  const traced = { model: job.model, values: job.values, origins: originsOf(job) };
  const cell = job.model.byId.get(name);
  if (cell !== undefined) return trace(traced, cell, depth);
  const [table = "", key = ""] = name.split(".");
  if (!job.model.tables.get(table)?.columns.has(key)) return undefined;
  return traceColumn(traced, table, key, depth);
}
