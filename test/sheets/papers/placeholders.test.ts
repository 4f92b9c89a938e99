import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { loadJob } from "../../../engine/book/load-job.js";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import { CellError } from "../../../engine/formula/value.js";
import { templates } from "../../../sheets/templates/index.js";
import { pagesAfter, withMachine } from "../../support/changed-demo.js";
import { demoFolder } from "../../support/demo.js";

/**
 * Each: a placeholder, what puts the real value in its place, what puts the placeholder there,
 * the page, the sentence that rests on it, and what stands there while it is a placeholder.
 */
const cases: readonly [
  string,
  Record<string, unknown>,
  Record<string, unknown>,
  "proposal" | "crew",
  RegExp,
  RegExp,
][] = [
  [
    "weather: days without a fill",
    { weather_is_local: true },
    { weather_is_local: false },
    "proposal",
    /if the automatic fill ever fails, it runs about \d+ days? in warm weather/,
    /It holds about [\d,]+ gallons\.$/m,
  ],
  [
    "weather: water lost in a day",
    { weather_is_local: true },
    { weather_is_local: false },
    "proposal",
    /about \d+ gallons evaporate or splash away each day/,
    /Water that evaporates or splashes away must be made up/,
  ],
  [
    "rain days of the months",
    { rain_is_local: true },
    { rain_is_local: false },
    "proposal",
    /With the usual rain in \w+ the work takes \d+ working days on site \(about \d+ without rain\), or about \d+ calendar/,
    /about \d+ working days, and longer where rain stops it\./,
  ],
  [
    "design storm",
    { storm_is_local: true },
    { storm_is_local: false },
    "crew",
    /The design storm, \d+ in, spills \d+ gal over/,
    /In heavy rain the basin spills over at/,
  ],
];

describe("a placeholder is never stated as a fact", () => {
  test.each(cases)("%s", (_, real, placeholder, page, fact, instead) => {
    const stated = pagesAfter(real)[page].join("\n");
    expect(stated).toMatch(fact);
    expect(stated).not.toMatch(instead);
    const left = pagesAfter(placeholder)[page].join("\n");
    expect(left).not.toMatch(fact);
    expect(left).toMatch(instead);
  });

  // the demo's prices hold until spring 2027
  const drafts: readonly [string, Record<string, unknown>, RegExp][] = [
    [
      "a price that has expired",
      { bid_date: "2028-11-02" },
      /^DRAFT, not to be handed out: \d+ checks fail, the first: .*[Pp]rice.* \(sheet \w+\)/,
    ],
    ["a company that is not named", { company: "" }, /^DRAFT, .*no company is named/],
    ["a company of spaces", { company: "  " }, /^DRAFT, .*no company is named/],
  ];

  test("an input in error: the Proposal begins with DRAFT and the sheet, or with an error", async () => {
    const { model, given } = await loadJob(join(demoFolder, "garden-corner.json"), templates);
    const first = model.byId.get("proposal_draft_1");
    const filled = model.cells.filter(
      ({ declaration, index }) => declaration.kind === "input" && given[index] !== null,
    );
    const seen = { draft: 0, error: 0 };
    for (const { id, index } of filled.filter((_, i) => i % 25 === 0)) {
      const poisoned = given.with(index, new CellError("#DIV/0!"));
      const begins = calculateFast(model, poisoned)[first?.index as number];
      if (begins instanceof CellError) seen.error += 1;
      else {
        expect(begins, id).toMatch(/^DRAFT, not to be handed out: cells in error on \w+/);
        seen.draft += 1;
      }
    }
    expect(seen.draft).toBeGreaterThan(seen.error);
  });

  test.each(drafts)("%s: the Proposal begins with DRAFT and the reason", (_, change, draft) => {
    expect(pagesAfter().proposal.join("\n")).not.toMatch(/DRAFT/);
    expect(pagesAfter(change).proposal[0]).toMatch(draft);
  });
});

describe("a lifting chart that nobody copied from its cab", () => {
  const crew = (chart_copied: boolean, changed: Record<string, unknown> = {}) =>
    pagesAfter(changed, { prices: withMachine({ chart_copied }) }).crew.join("\n");
  const stopped = /STOP\. Do not lift .* was not copied from its cab/;

  test("allows nothing", () => {
    expect(crew(true)).toMatch(/the chart of .* allows/);
    expect(crew(true)).not.toMatch(stopped);
    expect(crew(false)).not.toMatch(/the chart of .* allows/);
    expect(crew(false)).toMatch(stopped);
  });

  test("forbids nothing either: nobody knows", () => {
    const far = { working_radius: 40 };
    expect(crew(true, far)).toMatch(/STOP\. Do not lift: .* the chart of .* allows/);
    expect(crew(false, far)).toMatch(stopped);
  });
});
