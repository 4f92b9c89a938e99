import { run } from "../../engine/cli/run.js";
import type { Template } from "../../engine/template/template.js";

export interface Spoken {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command line and keeps what it says. */
export async function spoken(
  args: readonly string[],
  templates: readonly Template[],
): Promise<Spoken> {
  let [out, err] = ["", ""];
  const status = await run(args, templates, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { status, out, err };
}
