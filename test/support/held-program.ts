import { type ChildProcessWithoutNullStreams, spawn } from "node:child_process";
import { type Point, stands } from "./stopping.js";

/** How a program that was started ended, and what it said, line by line. */
export interface Ended {
  readonly code: number | null;
  readonly said: readonly string[];
  readonly err: string;
}

/** A program that runs. */
export interface Running {
  readonly ended: Promise<Ended>;
  /** Comes where it stands still; a program that ends before is an error. */
  readonly still: Promise<void>;
  /** Comes with the first thing that it says, or with its end. */
  readonly spoke: Promise<void>;
  goOn(): void;
  kill(): void;
}

/** Starts a program; held, where a point is named, when it comes by there for the `time`th time: see `standStillAt`. */
export function started(
  script: string,
  args: readonly string[],
  hold?: { readonly at: Point; readonly time: number },
): Running {
  const env = { ...process.env, ...(hold && { HOLD_AT: hold.at, HOLD_TIME: `${hold.time}` }) };
  const child: ChildProcessWithoutNullStreams = spawn(process.execPath, [script, ...args], { env });
  let [out, err] = ["", ""];
  child.stdout.on("data", (piece) => {
    out += String(piece);
  });
  child.stderr.on("data", (piece) => {
    err += String(piece);
  });
  const lines = () => out.split("\n").filter(Boolean);
  const ended = new Promise<Ended>((settle) => {
    child.on("close", (code) =>
      settle({ code, err, said: lines().filter((line) => line !== stands) }),
    );
  });
  const said = (holds: () => boolean) =>
    new Promise<void>((settle, fail) => {
      child.stdout.on("data", () => holds() && settle());
      child.on("close", () => (holds() ? settle() : fail(new Error(`${script} ended: ${err}`))));
    });
  const still = said(() => lines().includes(stands));
  const spoke = said(() => lines().length > 0);
  for (const one of [still, spoke]) one.catch(() => undefined);
  return {
    ended,
    still,
    spoke,
    goOn: () => child.stdin.end("\n"),
    kill: () => child.kill("SIGKILL"),
  };
}
