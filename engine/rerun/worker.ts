import { workerData } from "piscina";
import { programStore } from "../stored/store.js";
import { templatesFrom } from "../template/from-file.js";
import { useStore } from "../template/models.js";
import type { Template } from "../template/template.js";
import { type Asked, type Done, Rerunner, type Task } from "./rerun-one.js";
import { tradeOf } from "./trade.js";
import type { TemplateSources } from "./workers.js";

/** A worker thread: loads the templates by itself, since formulas cannot be sent between threads. */
const { templatesModule, templateFiles, asked } = workerData as TemplateSources & { asked: Asked };
useStore(programStore());
const { templates } = (await import(templatesModule)) as { templates: readonly Template[] };
const own = (await Promise.all(templateFiles.map(templatesFrom))).flat();
const rerunner = new Rerunner(tradeOf([...own, ...templates]), asked);

export default (tasks: readonly Task[]): Promise<Done[]> => rerunner.run(tasks);
