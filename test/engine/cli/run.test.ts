import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { fence } from "../../support/fence.js";
import { spoken } from "../../support/spoken.js";

const say = (...args: string[]) => spoken(args, [fence]);

test("bare, it prints its help and ends well", async () => {
  const { status, out, err } = await say();
  expect([status, err]).toEqual([0, ""]);
  expect(out).toMatch(/^Usage: rillbook .*[\s\S]* bid .*[\s\S]* rerun /);
});

test.each(["--version", "-V"])("%s", async (option) => {
  const { version } = JSON.parse(
    readFileSync(new URL("../../../package.json", import.meta.url), "utf8"),
  );
  expect(await say(option)).toEqual({ status: 0, out: `${version}\n`, err: "" });
});

test("an unknown command is bad usage", async () => {
  expect(await say("bidd")).toMatchObject({
    status: 2,
    err: expect.stringMatching(/Did you mean bid/),
  });
});

test.each<[string[], RegExp]>([
  [
    ["set", "none.json", "height=6"],
    /^options-missing: --by and --from are missing: .*Site crew.*measured on site.* Add them\./,
  ],
  [
    ["set", "none.json", "height=6", "--by", "A"],
    /^options-missing: --from is missing: .*measured on site" \(or: drawing, /,
  ],
  [["set", "none.json", "height=6", "--from", "drawing"], /^options-missing: --by is missing/],
])("%j: what is missing is told at once", async (args, sentence) => {
  const { status, err } = await say(...args);
  expect(status).toBe(2);
  expect(err).toMatch(sentence);
});
