import { workerData } from "piscina";
import { programStore } from "../stored/store.js";
import { useStore } from "../template/models.js";
import type { Template } from "../template/template.js";
import { type Asked, type Done, Rerunner, type Task } from "./rerun-one.js";
import { tradeOf } from "./trade.js";

/** A worker thread: loads the templates by itself, since formulas cannot be sent between threads. */
const { templatesModule, asked } = workerData as { templatesModule: string; asked: Asked };
useStore(programStore());
const { templates } = (await import(templatesModule)) as { templates: readonly Template[] };
const rerunner = new Rerunner(tradeOf(templates), asked);

export default async function run(tasks: readonly Task[]): Promise<Done[]> {
  const done: Done[] = [];
  for (const task of tasks) done.push(await rerunner.run(task));
  return done;
}
