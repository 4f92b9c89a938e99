import { spawnSync } from "node:child_process";
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { repository, textOf } from "./repository.js";

/** Runs the script where only these programs are found; each prints its name and arguments. */
function packages(...programs: readonly string[]) {
  const folder = mkdtempSync(join(tmpdir(), "rillbook-packages-"));
  try {
    for (const name of programs) {
      const path = join(folder, name);
      writeFileSync(path, `#!/bin/sh\necho ${name === "id" ? "1000" : `ran ${name} "$@"`}\n`);
      chmodSync(path, 0o755);
    }
    const run = spawnSync("/bin/bash", [".ci/packages"], {
      cwd: repository,
      encoding: "utf8",
      env: { PATH: folder },
    });
    return { status: run.status, out: run.stdout, err: run.stderr };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
const all = ["soffice", "ssconvert", "pdftoppm"];

test("the README's test command installs what the tests need, and continuous integration runs it", () => {
  expect(textOf("README.md")).toContain("npm ci && bash .ci/packages && npm test");
  expect(textOf(".ci/run")).toContain("command=$(bash .ci/readme-command test)");
});

test("without apt-get it ends with 1 and says what to install", () => {
  const { status, err } = packages("soffice", "pdftoppm");
  expect(err).toMatch(/missing here, by their names in Debian: gnumeric/);
  expect(status).toBe(1);
});

test("as another user without sudo it says what root is to run", () => {
  const { status, err } = packages("soffice", "ssconvert", "apt-get", "id");
  expect(err).toMatch(/As root, run: apt-get update && apt-get install .* poppler-utils/);
  expect(status).toBe(1);
});

test("as another user it goes by sudo; what is still missing then is a failure", () => {
  const { status, out, err } = packages("soffice", "pdftoppm", "apt-get", "id", "sudo");
  expect(out).toMatch(/ran sudo apt-get update -qq\n/);
  expect(out).toMatch(/ran sudo env .*apt-get install -y -qq --no-install-recommends gnumeric/);
  expect(err).toMatch(/Installed, but still not found: gnumeric/);
  expect(status).toBe(1);
});

test("where all is there it does nothing", () => {
  const { status, out } = packages(...all, "apt-get", "id", "sudo");
  // the fonts are a folder, and may be missing on the machine that runs this
  if (status === 0) expect(out).toBe("");
  else expect(out).toMatch(/fonts-liberation\n$/);
});
