import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { runSoffice } from "../office/run-soffice.js";
import { bench } from "./bench.js";
import { measured } from "./measured.js";

/** `npm run bench -- 1000 8`: the most jobs, and how many workbooks. */
const [most = 10_000, bookCount = 24] = process.argv.slice(2).map(Number);
/** Code gets faster as it runs, which few files do not show; LibreOffice goes at one rate. */
const copies = 10;
const folder = await mkdtemp(join(tmpdir(), "rillbook-bench-"));
try {
  await bench({
    ...{ folder, measured, most, bookCount, copies },
    say: (line) => process.stdout.write(`${line}\n`),
    office: async (into, files) => {
      await runSoffice(["--convert-to", "xlsx", "--outdir", into, ...files]);
    },
    prices: fileURLToPath(new URL("../../../../sheets/demo/office-book.json", import.meta.url)),
  });
} finally {
  await rm(folder, { recursive: true, force: true });
}
