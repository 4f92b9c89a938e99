import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { run } from "../../engine/cli/run.js";
import { templates } from "../../sheets/templates/index.js";
import { demoFolder } from "../support/demo.js";
import { repository } from "./repository.js";

const block = /(<!-- trace -->\n```\n)([\s\S]*?)(```\n)/;
const command = "npx rillbook trace sheets/demo/garden-corner.json price --depth 3";

// the numbers printed at each level are checked in test/sheets/trace.test.ts
test("the README's trace is what the program prints", async () => {
  let out = "";
  const job = join(demoFolder, "garden-corner.json");
  await run(["trace", job, "price", "--depth", "3"], templates, {
    out: (text) => {
      out += text;
    },
    err: () => {},
  });
  const printed = `$ ${command}\n${out}`;
  const file = join(repository, "README.md");
  const readme = await readFile(file, "utf8");
  if (process.env.UPDATE_GOLDEN) {
    await writeFile(
      file,
      readme.replace(block, (_, start, __, end) => `${start}${printed}${end}`),
    );
    return;
  }
  expect(block.exec(readme)?.[2], "run with UPDATE_GOLDEN=1 after a change").toBe(printed);
});
