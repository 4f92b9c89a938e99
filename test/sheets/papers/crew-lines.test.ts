import { describe, expect, test } from "vitest";
import { type Changes, changedDemo, model } from "../../support/changed-demo.js";
import { pageCells } from "../../support/page-cells.js";

/** The lines of the Crew page of the hillside demo with some inputs changed. */
function crew(changed: Changes, pasted: Changes = {}): string[] {
  const values = changedDemo(changed, { pasted });
  return pageCells(model, "crew").map(({ index }) => String(values[index] ?? ""));
}
const page = (changed: Changes = {}) => crew(changed).join("\n");

test("runs and pools are dug deeper than they finish, and Crew says how deep", () => {
  const said = page({ channel_cut: 1, bed_stone_depth: 6 });
  // banks of 9 in and 6 in of stone
  expect(said).toMatch(/Upper run: where it is cut, dig 1 ft 3 in deep/);
  expect(said).toMatch(/Mirror pool: dig .* deep, .* at the bottom/);
  expect(said).toContain("dug 6 in deeper than they finish");
  expect(page({ channel_cut: 0 })).not.toContain("where it is cut, dig");
});

test("a ladder is told wherever one is needed, not only where too few are brought", () => {
  expect(page()).toMatch(/Bring 1 ladder or ramp; nobody in the dig is farther than/);
  expect(page({ ladders_brought: 0 })).toContain("STOP. Ladders or ramps");
});

describe("whoever does the circuit, the crew knows its voltage and what it waits for", () => {
  test.each([
    ["by us", "by our licensed electrician: "],
    ["by an electrician in our price", "no pump is started before it is done and tested"],
    ["by the customer", "before their electrician has done and tested it"],
  ])("%s", (electrical_work, words) => {
    const said = page({ electrical_work });
    expect(said).toContain(words);
    expect(said).toContain("240 V");
  });
});

test("a soil typed past its list puts errors into the lines: the page still begins with DRAFT", () => {
  const [first, ...rest] = crew({}, { dig_soil_type: "sandy" });
  expect(first).toMatch(/^DRAFT, not to be handed out/);
  expect(rest.join()).toContain("#N/A");
});
