#!/usr/bin/env node
import { templates } from "../../sheets/all-templates.js";
import { programStore } from "../stored/store.js";
import { useStore } from "../template/models.js";
import { askAtTerminal } from "./ask-at-terminal.js";
import { compileLess } from "./compile-less.js";
import { run } from "./run.js";

compileLess();
useStore(programStore());

// the reader of a pipe may stop early, as `head` does: that is no fault
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
  process.exit(process.exitCode ?? 0);
});

process.exitCode = await run(
  process.argv.slice(2),
  templates,
  {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    // color never says more than the words: https://no-color.org
    color: process.stdout.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== "dumb",
    ...(process.stderr.isTTY ? { progress: (text: string) => process.stderr.write(text) } : {}),
    ...(process.stdin.isTTY && process.stderr.isTTY ? { ask: askAtTerminal } : {}),
  },
  new URL("../../sheets/all-templates.js", import.meta.url).href,
);
