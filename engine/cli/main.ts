#!/usr/bin/env node
import { templates } from "../../sheets/templates/index.js";
import { run } from "./run.js";

process.exitCode = await run(
  process.argv.slice(2),
  templates,
  {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    ...(process.stderr.isTTY ? { progress: (text: string) => process.stderr.write(text) } : {}),
  },
  new URL("../../sheets/templates/index.js", import.meta.url).href,
);
