import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { modelOf } from "../../../engine/template/models.js";
import { waterfall } from "../../../sheets/templates/waterfall.js";
import { pagesAfter } from "../../support/changed-demo.js";

/** Pieces that a spelling of units could take for a unit, and others that it should not. */
const pieces = [
  " gal",
  " gallery",
  " ft",
  " ft²",
  " in",
  " inn",
  " yd³",
  " yd³",
  " gal/h",
  " h/day",
  " ton ",
  " tons",
  " m²",
  " L",
  " lb",
  ".00 ",
  " 1 tons",
  " 1 days",
  " 1 people",
  " days",
  " $",
  "°",
  "art",
  "Stone",
  "12",
  "{falls.width[1]}",
  "~",
  "■",
  '"',
  "&",
];
const text = fc
  .array(fc.constantFrom(...pieces), { minLength: 1, maxLength: 8 })
  .map((found) => `x${found.join("")}x`);

describe("what a person wrote stands on the pages as it was written", () => {
  test("a title with an art gallery in it", () => {
    const { proposal } = pagesAfter({ job_title: "A pond for the art gallery" });
    expect(proposal).toContain("A pond for the art gallery");
  });

  test("titles, names and places made of what looks like units", { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(text, text, text, text, text, (title, site, fall, pool, place) => {
        const { proposal, crew } = pagesAfter({
          job_title: title,
          site,
          overflow_place: place,
          falls: [{ name: fall, level: 1, width: 3, drop: 1.5 }],
          pools: [{ name: pool, before_level: 1, length: 7, width: 5, depth: 1.2 }],
        });
        const has = (lines: readonly string[], wanted: string) =>
          expect(lines.filter((line) => line.includes(wanted)).length, wanted).toBeGreaterThan(0);
        has(proposal, title);
        has(proposal, `For Another invented customer, ${site}`);
        has(proposal, `•  ${fall}: a fall 3 ft wide`);
        has(proposal, `•  ${pool}: an open pool about 7 ft by 5 ft`);
        has(proposal, `water runs over at ${place}.`);
        has(crew, `Work to do: ${title}`);
        has(crew, site);
        has(crew, `${fall}, level 1`);
        has(crew, `•  ${fall}: finished `);
        has(crew, `over at ${place}: lay stone there`);
      }),
      { numRuns: 20 },
    );
  });

  test("no formula of the template replaces letters in a text", () => {
    for (const system of ["us", "si"] as const) {
      const replacing = modelOf(waterfall, system).cells.filter(({ native }) =>
        JSON.stringify(native ?? null).includes('"SUBSTITUTE"'),
      );
      expect(replacing.map(({ id }) => id)).toEqual([]);
    }
  });
});
