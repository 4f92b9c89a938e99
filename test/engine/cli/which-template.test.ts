import { mkdtemp, readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { run } from "../../../engine/cli/run.js";
import { templates } from "../../../sheets/templates/index.js";

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-which-"));
});

/** A new job record, begun where a person types an answer, or where nobody can be asked. */
async function started(name: string, args: readonly string[], answer?: string) {
  const file = join(folder, `${name}.json`);
  let [out, err, asked] = ["", "", ""];
  const status = await run(["start", file, ...args], templates, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    ...(answer !== undefined && {
      ask: async (words: string) => {
        asked += words;
        return answer;
      },
    }),
  });
  const template = async () => JSON.parse(await readFile(file, "utf8")).template as string;
  return { status, out, err, asked, template };
}

describe("what is to be built", () => {
  test.each([
    ["", "waterfall"],
    ["2", "bubbling-stones"],
    [" bubbling-stones ", "bubbling-stones"],
  ])("%j typed at a terminal begins a job of %s", async (answer, name) => {
    const { status, asked, err, template } = await started(`typed-${answer.trim()}`, [], answer);
    expect(asked).toMatch(/1 {2}Disappearing waterfall .*\n {2}2 {2}Bubbling stones/);
    expect([status, err]).toEqual([0, ""]);
    expect(await template()).toBe(name);
  });

  test("an answer that names none is refused, and nothing is written", async () => {
    const { status, err, template } = await started("none", [], "fountain");
    expect(status).toBe(2);
    expect(err).toMatch(/"fountain", which is not known.* There are: waterfall, bubbling-stones/);
    await expect(template()).rejects.toThrow();
  });

  test("without a terminal it is the first, and that is told", async () => {
    const { err, template } = await started("quiet", []);
    expect(err).toBe("note: template waterfall. Others: --template bubbling-stones.\n");
    expect(await template()).toBe("waterfall");
  });

  test("nobody is asked where the command line says it", async () => {
    const { asked, err, template } = await started(
      "said",
      ["--template", "bubbling-stones"],
      "waterfall",
    );
    expect([asked, err]).toEqual(["", ""]);
    expect(await template()).toBe("bubbling-stones");
  });
});

test("what is told of the others, and the help, name no workbook of learned rates: no job is one", async () => {
  const { err } = await started("told", []);
  expect(err).toMatch(/^note: template waterfall\. Others: --template bubbling-stones\.\n/);
});
