import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { randomFrom } from "../../engine/weigh/random.js";
import { targets } from "./targets.js";

/**
 * `npm run fuzz -- [minutes] [seed] [target]`: random files for the parts that get files from anyone. What fails is
 * saved; once mended, put a small one of them into `test/fuzz/corpus`, where the unit tests try it again.
 */
const [minutes = "5", asked, only] = process.argv.slice(2);
const first = Number(asked ?? Date.now() % 1e9);
const folder = "out/fuzz-failures";
const say = (line: string) => process.stdout.write(`${line}\n`);
const chosen = targets.filter(({ name }) => only === undefined || name === only);
const counts = new Map(chosen.map(({ name }) => [name, { tried: 0, refused: 0, failed: 0 }]));

say(`seed ${first}, ${minutes} minutes: ${chosen.map(({ name }) => name).join(", ")}`);
const end = Date.now() + Number(minutes) * 60_000;
for (let seed = first; Date.now() < end; seed++) {
  for (const { name, ending, make, check } of chosen) {
    const count = counts.get(name) as { tried: number; refused: number; failed: number };
    // a formula is a thousand times as fast as a workbook
    for (let i = 0; i < (name === "formula" ? 200 : 1); i++) {
      const random = randomFrom(seed * 1000 + i);
      const input = await make((n) => Math.floor(random() * n));
      count.tried += 1;
      try {
        if (await check(input)) count.refused += 1;
      } catch (error) {
        count.failed += 1;
        const path = join(folder, `${name}-${seed}-${i}.${ending}`);
        await mkdir(folder, { recursive: true });
        await writeFile(path, input);
        say(`${path}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
      }
    }
  }
}
for (const [name, { tried, refused, failed }] of counts) {
  say(`${name}: ${tried} tried, ${refused} refused, ${failed} failed`);
}
process.exitCode = [...counts.values()].some(({ failed }) => failed > 0) ? 1 : 0;
