import { createHash } from "node:crypto";
import { readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { chartsOf } from "../../engine/template/chart.js";
import { modelOf } from "../../engine/template/models.js";
import { waterfall } from "../../sheets/templates/waterfall.js";
import { repository } from "./repository.js";

const folder = join(repository, "sheets", "demo", "pictures");
const noted = join(folder, "shows.txt");
const pictures = ["summary", "profile", "proposal"];

/** What the pictures show, but for the figures: labels of the headline, charts with their series, headings. */
function shown(): string {
  const { placed, byId } = modelOf(waterfall, "us");
  const charts = placed.flatMap(({ block, sheet }) =>
    block.kind === "chart" && ["Falls", "Price", "Proposal"].includes(sheet)
      ? chartsOf(block).map(({ heading, series }) => [heading, ...series.map(({ label }) => label)])
      : [],
  );
  const proposal = placed.filter(({ sheet }) => sheet === "Proposal");
  const what = {
    headline: waterfall.headline.map((name) => byId.get(name)?.declaration.label),
    charts,
    proposal: proposal.map(({ block }) => [block.kind, block.heading]),
  };
  return createHash("sha256").update(JSON.stringify(what)).digest("hex");
}

test("the README's pictures show what the sheets hold now", () => {
  if (process.env.UPDATE_PICTURES) writeFileSync(noted, `${shown()}\n`);
  expect(readFileSync(noted, "utf8"), "draw them again: bash test/pictures/make.sh").toBe(
    `${shown()}\n`,
  );
});

test.each(pictures)("the picture %s is small, and stands in the README", (name) => {
  const path = `sheets/demo/pictures/${name}.png`;
  expect(statSync(join(repository, path)).size).toBeLessThan(150_000);
  expect(readFileSync(join(repository, "README.md"), "utf8")).toContain(`](${path})`);
});
