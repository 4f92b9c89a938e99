import { writeSync } from "node:fs";
import { isMainThread } from "node:worker_threads";

// Loaded before a command (`node --import`): tells at its end, on a pipe, what memory it took at most, threads included.
if (isMainThread) {
  process.on("exit", () => {
    writeSync(3, String(process.resourceUsage().maxRSS));
  });
}
