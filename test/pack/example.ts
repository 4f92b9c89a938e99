import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { repository } from "../house/repository.js";

const example = join(repository, "test/pack/example");

/** A workbook as a library stores it that drops custom properties. */
function withoutProperties(path: string): Uint8Array {
  const parts = unzipSync(readFileSync(path));
  const without = (part: string, entry: RegExp) => {
    parts[part] = strToU8(strFromU8(parts[part] as Uint8Array).replace(entry, ""));
  };
  without("_rels/.rels", /<Relationship [^>]*custom[^>]*\/>/);
  without("[Content_Types].xml", /<Override [^>]*custom[^>]*\/>/);
  const { "docProps/custom.xml": _, ...kept } = parts;
  return zipSync(kept);
}

type Run = (program: string, args: readonly string[], cwd?: string) => string;

/**
 * Another trade, by import alone: a fence (all of it invented) on the packed package, in a folder that has nothing else.
 * By hand: runs of 60 and 33.5 ft with posts every 8 ft take 9 and 6 posts; their face, 6 ft high, is 561 ft², at
 * 2 ft² a board 281 boards. Posts at $20, boards at $3, $65 of labor a post: cost $2,118, price at 20 % margin
 * $2,647.50; with boards at $4, $2,998.75. The metric job is as long to a few centimeters.
 */
export function exampleTests(folder: () => string, run: Run): void {
  describe.each(["us", "si"] as const)("a fence, in %s", (units) => {
    let place: string;
    const rillbook = (...args: readonly string[]) => {
      const bin = join(folder(), "node_modules/.bin/rillbook");
      const { status, stdout, stderr } = spawnSync(bin, args, { cwd: place, encoding: "utf8" });
      return { status, stdout, stderr };
    };
    const done = (...args: readonly string[]): string => {
      const { status, stdout, stderr } = rillbook(...args);
      expect([status, stderr], args.join(" ")).toEqual([0, ""]);
      return stdout;
    };

    test("goes all the way by import", () => {
      place = join(folder(), `by-import-${units}`);
      cpSync(example, place, { recursive: true });
      const args = ["estimate.mjs", `${units}.json`, "office.json", "dearer.json"];
      const told = JSON.parse(run("node", args, place));
      expect(told).toMatchObject({ stands: true, clean: true, entries: 0, jobs: 2 });
      expect(told.price).toBeCloseTo(2647.5, 6);
      expect(told.now).toBeCloseTo(2998.75, 6);
      const { inputs } = JSON.parse(readFileSync(join(place, `${units}.json`), "utf8"));
      expect(told.inputs).toEqual(inputs);
      expect(told.trace).toContain("total_cost/(1-margin)");
    });

    test("goes all the way by the command line, from a folder without the package", () => {
      place = mkdtempSync(join(tmpdir(), "rillbook-office-"));
      try {
        cpSync(example, place, { recursive: true });
        const own = ["--template", "fence.mjs"];
        const started = done("start", "new.json", "--job", "F-9", "--units", units, ...own);
        expect(started).toContain("Then: rillbook bid new.json -o bid.xlsx --template fence.mjs");
        expect(JSON.parse(readFileSync(join(place, "new.json"), "utf8"))).toMatchObject({
          ...{ template: "fence", units, job: "F-9" },
        });
        expect(done("bid", `${units}.json`, "-o", "bid.xlsx", ...own)).toContain("$2,647.50");
        expect(done("show", "bid.xlsx", "price", ...own)).toContain("$2,647.50");
        expect(done("audit", "bid.xlsx", ...own)).toMatch(/^CLEAN/);
        expect(done("take", "bid.xlsx", "-o", "taken.json", "--by", "A", ...own)).toContain(
          "no input was changed",
        );
        expect(done("bid", "taken.json", "-o", "again.xlsx", ...own)).toContain("$2,647.50");
        if (units === "us") {
          writeFileSync(join(place, "lost.xlsx"), withoutProperties(join(place, "bid.xlsx")));
          const lost = rillbook("take", "lost.xlsx", ...own);
          expect(lost.stderr).toMatch(
            /^properties-lost: .*--template \S*fence\.mjs --template fence /,
          );
          const which = [...own, "--template", "fence", "--office", "office.json"];
          expect(done("take", "lost.xlsx", "-o", "found.json", ...which, "--by", "A")).toContain(
            "Written: found.json (6 changes)",
          );
        }
        const job = ["rerun", `${units}.json`, "--office", "dearer.json", "--as-of", "2027-02-01"];
        expect(rillbook(...job, ...own, "--workers", "2").stdout).toContain("$2,998.75 now");

        const unknown = rillbook("audit", "bid.xlsx");
        expect(unknown.status).toBe(1);
        expect(unknown.stdout).toMatch(/from the file fence\.mjs: give that by --template/);

        // the file is changed under the same version
        const file = join(place, "fence.mjs");
        const changed = readFileSync(file, "utf8").replace(
          "total_cost/(1-margin)",
          "total_cost/0.7",
        );
        writeFileSync(
          file,
          changed
            .replace('margin: input(percent, "Profit', 'rest: input(percent, "')
            .replace('price-total_cost"', 'price-total_cost*(1+rest)"'),
        );
        expect(rillbook("audit", "bid.xlsx", ...own).stdout).toMatch(
          /as it was when the bid was written/,
        );
        expect(rillbook("take", "bid.xlsx", "-o", "no.json", ...own).stderr).toMatch(
          /^template-changed: /,
        );
      } finally {
        rmSync(place, { recursive: true });
      }
    });
  });

  test("an office's own change to a template, over the command line", () => {
    const place = join(folder(), "our-fence");
    cpSync(example, place, { recursive: true });
    const job = JSON.parse(readFileSync(join(place, "us.json"), "utf8"));
    writeFileSync(join(place, "ours.json"), JSON.stringify({ ...job, template: "our-fence" }));
    const own = ["--template", "our-fence.mjs"];
    const bin = join(folder(), "node_modules/.bin/rillbook");
    // a permit of $120 at a margin of 20 %
    expect(run(bin, ["bid", "ours.json", "-o", "ours.xlsx", ...own], place)).toContain("$2,797.50");
    expect(run(bin, ["audit", "ours.xlsx", ...own], place)).toMatch(/^CLEAN/);
  });

  test("its types hold for whoever imports it, those of what it depends on left aside", () => {
    const place = join(folder(), "types");
    mkdirSync(place);
    writeFileSync(join(place, "package.json"), '{ "type": "module" }\n');
    writeFileSync(
      join(place, "own.ts"),
      `import { calculate, extend, openJob, type Bid, type Template, valueAt } from "rillbook";
import { templates, waterfall } from "rillbook/sheets";

const own: Template = extend(waterfall, { name: "own", version: 1 });
const bid: Bid = await calculate(await openJob("job.json", [own, ...templates]));
export const price: number = Number(valueAt(bid, "price"));
// @ts-expect-error a template has a name
extend(waterfall, { version: 1 });
`,
    );
    const tsc = join(repository, "node_modules/typescript/lib/tsc.js");
    const strict = ["--noEmit", "--strict", "--skipLibCheck", "false", "--target", "es2023"];
    const modules = ["--module", "nodenext", "--types", "", "own.ts"];
    const args = [tsc, ...strict, ...modules];
    const { stdout } = spawnSync(process.execPath, args, { cwd: place, encoding: "utf8" });
    // the types of saxes do not hold by themselves
    const faults = stdout.split("\n").filter((line) => /: error /.test(line));
    expect(faults.filter((line) => !/node_modules\/saxes\//.test(line))).toEqual([]);
    expect(stdout).not.toMatch(/own\.ts/);
  });
}
