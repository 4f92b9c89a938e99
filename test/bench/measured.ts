import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

/** What a command took: the whole process, start included. */
export interface Measured {
  readonly seconds: number;
  /** Peak resident memory, MB. */
  readonly peak: number;
}

const child = fileURLToPath(new URL("./child.js", import.meta.url));

/** Runs a rillbook command in a process of its own. Throws where it ends with a status above 1. */
export function measured(args: readonly string[]): Promise<Measured> {
  return new Promise((resolve, reject) => {
    const begun = performance.now();
    const process_ = spawn(process.execPath, [child, ...args], {
      stdio: ["ignore", "ignore", "pipe", "ipc"],
    });
    let printed = "";
    let peak = 0;
    process_.stderr?.on("data", (chunk) => {
      printed += chunk;
    });
    process_.on("message", (kilobytes) => {
      peak = Number(kilobytes) / 1024;
    });
    process_.on("error", reject);
    process_.on("close", (status) => {
      const seconds = (performance.now() - begun) / 1000;
      if (status === null || status > 1) reject(new Error(`${args.join(" ")}: ${printed}`));
      else resolve({ seconds, peak });
    });
  });
}
