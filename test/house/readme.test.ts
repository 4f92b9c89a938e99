import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";
import { repository } from "./repository.js";

const command = (name: string) =>
  execFileSync("bash", [".ci/readme-command", name], {
    cwd: repository,
    encoding: "utf8",
    stdio: "pipe",
  });

test.each(["demo", "test"])("the README's %s command starts from a fresh checkout", (name) => {
  expect(command(name)).toMatch(/^npm ci && \S/);
});

test("a command that the README does not give is refused", () => {
  expect(() => command("no such")).toThrow("README.md has no block after <!-- no such command -->");
});
