import "../../support/held.js";
import { outputTo } from "../../../engine/output/write.js";

// Writes one file again and again until it is killed.
const [file = ""] = process.argv.slice(2);
for (let i = 0; ; i++) {
  const output = await outputTo(file, { kind: "report", inputs: [] });
  await output.write(`# Audit of ${i}\n${"x".repeat(2_000_000)}\nend`);
  process.stdout.write(`${i}\n`);
}
