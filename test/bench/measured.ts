import { spawn } from "node:child_process";

/** What a command took: the whole process, start included. */
export interface Measured {
  readonly seconds: number;
  /** Peak resident memory, MB. */
  readonly peak: number;
}

const hook = new URL("./peak.js", import.meta.url).href;

/** Runs commands of a built program, each in a process of its own. They throw where it ends with a status above 1. */
export function measuring(program: string): (args: readonly string[]) => Promise<Measured> {
  return (args) =>
    new Promise((resolve, reject) => {
      const begun = performance.now();
      const child = spawn(process.execPath, ["--import", hook, program, ...args], {
        stdio: ["ignore", "ignore", "pipe", "pipe"],
      });
      let [printed, kilobytes] = ["", ""];
      child.stdio[2]?.on("data", (chunk) => {
        printed += chunk;
      });
      child.stdio[3]?.on("data", (chunk) => {
        kilobytes += chunk;
      });
      child.on("error", reject);
      child.on("close", (status) => {
        const seconds = (performance.now() - begun) / 1000;
        if (status === null || status > 1) {
          reject(new Error(`${args.join(" ")} ended with ${status}: ${printed}`));
        } else resolve({ seconds, peak: Number(kilobytes) / 1024 });
      });
    });
}
