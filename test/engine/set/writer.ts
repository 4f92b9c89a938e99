import { setCommand } from "../../../engine/cli/set.js";
import { RillbookError } from "../../../engine/errors.js";
import "../../support/held.js";
import { fence } from "../../support/fence.js";

// Sets one input again and again, as a process of its own, and says each time that it is done or refused.
const [file = "", by = "", times = "1"] = process.argv.slice(2);
for (let i = 1; i <= Number(times); i++) {
  const command = setCommand({
    templates: [fence],
    out: () => process.stdout.write(`${by} ${i}\n`),
    json: () => undefined,
    verdict: () => undefined,
    err: (text) => process.stderr.write(text),
    status: 0,
  });
  const args = [
    file,
    `height=${1 + (i % 10)}`,
    "--by",
    by,
    "--from",
    "drawing",
    "--note",
    String(i),
  ];
  try {
    await command.parseAsync(args, { from: "user" });
  } catch (error) {
    if (!(error instanceof RillbookError)) throw error;
    process.stdout.write(`${by} ${i} refused: ${error.code}\n`);
  }
}
