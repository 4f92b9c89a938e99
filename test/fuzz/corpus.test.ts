import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { randomFrom } from "../../engine/weigh/random.js";
import { targets } from "./targets.js";

const folder = new URL("./corpus/", import.meta.url);

// what once failed under `npm run fuzz`
test.each(readdirSync(folder))("%s ends with a result or with a sentence", async (file) => {
  const target = targets.find(({ name }) => file.startsWith(`${name}-`));
  if (target === undefined) throw new Error(`${file} names no target.`);
  await target.check(readFileSync(new URL(file, folder)));
});

test.each(targets)("$name: random inputs are made, of which some are refused", async (target) => {
  const { make, check } = target;
  let refused = 0;
  for (let seed = 0; seed < 12; seed++) {
    const random = randomFrom(seed);
    if (await check(await make((n) => Math.floor(random() * n)))) refused += 1;
  }
  expect(refused).toBeGreaterThan(0);
  expect(refused).toBeLessThan(12);
});
