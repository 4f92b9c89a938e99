import { run } from "../../engine/cli/run.js";
import { templates } from "../../sheets/templates/index.js";

// One command, then what it took at most of memory, threads included.
process.exitCode = await run(
  process.argv.slice(2),
  templates,
  { out: () => undefined, err: (text) => process.stderr.write(text) },
  new URL("../../sheets/templates/index.js", import.meta.url).href,
);
await new Promise((sent) => process.send?.(process.resourceUsage().maxRSS, sent));
process.disconnect();
