import { existsSync } from "node:fs";
import { join, relative } from "node:path";
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** The files that take longest, the longest first: begun last, one of them would leave the other workers idle. */
export const longest: readonly string[] = [
  // makes every demo's bid, which serves all others; those that need one begin after it, so that none is made twice
  "test/office/demos-libreoffice.test.ts",
  "test/office/walk.test.ts",
  "test/office/built.test.ts",
  "test/office/demos-gnumeric.test.ts",
  "test/office/poison.test.ts",
  "test/office/pages.test.ts",
  "test/office/tampered.test.ts",
  "test/sheets/written.test.ts",
  "test/sheets/partial.test.ts",
  "test/sheets/money/audited.test.ts",
  "test/sheets/as-exceljs.test.ts",
  "test/engine/cli/start.test.ts",
  "test/engine/workbook/read/memory.test.ts",
  "test/engine/set/writers.test.ts",
  "test/engine/workbook/read/hostile.test.ts",
  "test/sheets/taken-back.test.ts",
  "test/engine/cli/bid.test.ts",
  "test/sheets/checks-fail.test.ts",
];

/** Within each project, the files that take longest first; the others as vitest has them. */
export default class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const { root } = this.ctx.config;
    const gone = longest.filter((name) => !existsSync(join(root, name)));
    if (gone.length > 0) throw new Error(`test/sequence.ts names no file: ${gone.join(", ")}`);
    const sorted = await super.sort(files);
    const projects = sorted.map(({ project }) => project.name);
    const place = ({ moduleId }: TestSpecification): number => {
      const at = longest.indexOf(relative(root, moduleId));
      return at < 0 ? longest.length : at;
    };
    const first = (name: string) => projects.indexOf(name);
    return sorted.sort(
      (a, b) => first(a.project.name) - first(b.project.name) || place(a) - place(b),
    );
  }
}
