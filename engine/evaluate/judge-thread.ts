import { type MessagePort, parentPort } from "node:worker_threads";
import { practice } from "./judge-practice.js";
import { judgedValues } from "./judge-sheets.js";
import type { JudgeTask } from "./judge-task.js";

/** A thread that judges one task after another. */
const port = parentPort as MessagePort;
port.on("message", (task: JudgeTask) => port.postMessage(judgedValues(task)));
judgedValues(practice());
