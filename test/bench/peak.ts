import { readFileSync, writeSync } from "node:fs";
import { isMainThread } from "node:worker_threads";

// Loaded before a command (`node --import`): tells at its end, on a pipe, what memory it took at most, threads included.
if (isMainThread) {
  process.on("exit", () => {
    writeSync(3, String(peak() ?? process.resourceUsage().maxRSS));
  });
}

/** On Linux, kilobytes: there `maxRSS` is at least what the process that started this one held. */
function peak(): number | undefined {
  if (process.platform !== "linux") return undefined;
  const [, found] = /^VmHWM:\s*(\d+) kB$/m.exec(readFileSync("/proc/self/status", "utf8")) ?? [];
  return found === undefined ? undefined : Number(found);
}
