import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { textOf } from "../house/repository.js";

/** A marked block of code: `file NAME`, `run` (with the status of its last line, where that is not 0) or `prints`. */
interface Step {
  readonly kind: "file" | "run" | "prints";
  readonly of: string;
  readonly text: string;
}

const stepsOf = (page: string): Step[] =>
  [...page.matchAll(/<!-- (file|run|prints)(?: (\S+))? -->\n```\w*\n([\s\S]*?)```/g)].map(
    ([, kind, of = "", text = ""]) => ({ kind: kind as Step["kind"], of, text }),
  );

/** Follows the tutorial word for word, in a folder in which the packed package is installed. */
export function tutorialTests(folder: () => string): void {
  test("the tutorial does what it says", () => {
    const place = join(folder(), "first-template");
    mkdirSync(place);
    const steps = stepsOf(textOf("engine/api/tutorial.md"));
    expect(steps.filter(({ kind }) => kind === "run").length).toBeGreaterThan(4);
    let printed = "";
    for (const { kind, of, text } of steps) {
      if (kind === "file") writeFileSync(join(place, of), text);
      else if (kind === "run") {
        printed = "";
        const lines = text.trim().split("\n");
        for (const [i, line] of lines.entries()) {
          const { status, stdout, stderr } = spawnSync("bash", ["-c", line], {
            cwd: place,
            encoding: "utf8",
          });
          printed += stdout + stderr;
          const wanted = i === lines.length - 1 ? Number(of || 0) : 0;
          expect(status, `${line}\n${stdout}${stderr}`).toBe(wanted);
        }
      } else for (const line of text.trim().split("\n")) expect(printed).toContain(line);
    }
  });
}
