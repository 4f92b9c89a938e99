#!/usr/bin/env node
import { templates } from "../../sheets/templates/index.js";
import { run } from "./run.js";

process.exitCode = await run(process.argv.slice(2), templates, {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
});
