import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Line } from "../../../engine/rerun/lines.js";
import type * as Rerun from "../../../engine/rerun/rerun.js";
import { tradeOf } from "../../../engine/rerun/trade.js";
import { repository } from "../../house/repository.js";
import { fenceBook } from "../../support/fence.js";
import { folder, nextBook, options, writeJob } from "./old-fence.js";
import { templates } from "./templates.js";

// Threads load built code, and below the checkout it finds the packages that it needs.
let built: string;
beforeAll(() => {
  built = mkdtempSync(join(repository, "node_modules/.rillbook-threads-"));
  const project = join(built, "tsconfig.json");
  writeFileSync(
    project,
    JSON.stringify({
      extends: relative(built, join(repository, "tsconfig.json")),
      compilerOptions: { rootDir: "../..", outDir: ".", typeRoots: ["../@types"] },
      include: ["../../engine", "../../test/engine/rerun/templates.ts"],
    }),
  );
  const tsc = join(repository, "node_modules/typescript/bin/tsc");
  execFileSync(process.execPath, [tsc, "-p", project], { stdio: "pipe" });
}, 60_000);
afterAll(() => rmSync(built, { recursive: true, force: true }));

test("worker threads give the lines that one thread gives", async () => {
  const path = join(built, "engine/rerun/rerun.js");
  const { rerun } = (await import(pathToFileURL(path).href)) as typeof Rerun;
  const into = await folder();
  const [old, prices] = [join(built, "old.json"), join(built, "next.json")];
  writeFileSync(old, JSON.stringify({ ...fenceBook, mark: undefined }));
  writeFileSync(prices, JSON.stringify({ ...nextBook, mark: undefined }));
  for (let i = 0; i < 40; i++) await writeJob(into, `job-${i}`, { office: old });
  writeFileSync(join(into, "broken.json"), "{");
  const lines = async (templatesModule: string | undefined): Promise<Line[]> => {
    const found: Line[] = [];
    const asked = options([into], { office: prices, workers: 2 });
    await rerun(tradeOf(templates), templatesModule, asked, { line: (line) => found.push(line) });
    return found.sort((a, b) => JSON.stringify(a).localeCompare(JSON.stringify(b)));
  };
  const threaded = await lines(pathToFileURL(join(built, "test/engine/rerun/templates.js")).href);
  expect(threaded.filter(({ line }) => line === "job")).toHaveLength(40);
  expect(threaded).toEqual(await lines(undefined));
});
