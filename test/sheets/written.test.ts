import { basename } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { beforeAll, describe, expect, test } from "vitest";
import { identityOf } from "../../engine/book/identity-of.js";
import type { ChartBlock, Template } from "../../engine/template/index.js";
import { chartsOf } from "../../engine/template/index.js";
import type { WorkbookContent } from "../../engine/workbook/read/content.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { readBack } from "../../engine/workbook/write/read-back.js";
import { beyondLimits } from "../support/beyond-limits.js";
import { staleCaches } from "../support/cached-points.js";
import { cachedIn, chartsIn, child, misplaced, titleOf, within } from "../support/chart-parts.js";
import { bidOf, type DemoBid, demoJobs } from "../support/demo.js";
import { faultOf, linksIn } from "../support/links.js";
import { contrast, readable } from "../support/readable.js";

// What is written of each demo bid, looked at as it stands in the file.

const declaredIn = ({ sheets }: Template): ChartBlock[] =>
  sheets.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === "chart" ? [...chartsOf(block)] : [])),
  );

describe.each(demoJobs())("%s", (job) => {
  let bid: DemoBid;
  let content: WorkbookContent;
  beforeAll(async () => {
    bid = await bidOf(job);
    content = readWorkbook(bid.bytes, { look: true });
  }, 120_000);

  test("keeps to the limits of the format", () => {
    expect(beyondLimits(bid.bytes)).toEqual([]);
  });

  test("is told to an audit as its file reads", () => {
    const told = readBack(bid.model, bid.values, identityOf(bid), true);
    // not by toEqual at once: of a whole workbook that takes seconds
    if (!isDeepStrictEqual(told, content)) expect(told).toEqual(content);
  });

  test("every link leads to a cell of a sheet in sight", () => {
    const links = [...linksIn(content)];
    const faults = links.flatMap(([target, from]) => {
      const fault = faultOf(content, target);
      return fault === undefined ? [] : [`${from}: ${fault}`];
    });
    expect(faults).toEqual([]);
    expect(links.length).toBeGreaterThan(60);
  });

  test("every text is read on its ground", () => {
    const { pairs, faults } = readable(content);
    expect(faults).toEqual([]);
    expect(pairs).toBeGreaterThan(10);
  });

  test("a sheet opens at its head, without lines of a grid; the first one is the first seen", () => {
    const { settings } = content.look ?? {};
    expect(settings?.get("workbookView.activeTab") ?? "0").toBe("0");
    for (const { name, state, look } of content.sheets) {
      if (state !== "visible") continue;
      expect([name, look?.settings.get("sheetView.showGridLines")]).toEqual([name, "0"]);
      const frozen = Number(look?.settings.get("pane.ySplit") ?? 0);
      expect([name, frozen > 0]).toEqual([name, name !== content.sheets[0]?.name]);
    }
  });

  test("has as many charts as the template, and two more on the first sheet", () => {
    const { template } = bid.model;
    expect(chartsIn(bid.bytes).size, basename(job)).toBe(declaredIn(template).length + 2);
  });

  test("the charts draw cells of the workbook, with their values cached", () => {
    expect(staleCaches(bid.bytes, content)).toEqual([]);
  });

  test("they have a number for each point, and their elements in the standard's order", () => {
    for (const chart of chartsIn(bid.bytes).values()) {
      expect(misplaced(chart)).toEqual([]);
      for (const { formula, count, points } of cachedIn(chart)) {
        expect(points.size, `${titleOf(chart)}: ${formula}`).toBe(count);
      }
    }
  });

  test("they have titled axes, where these are shown", () => {
    for (const chart of chartsIn(bid.bytes).values()) {
      const shown = within(chart, "valAx").filter(
        (axis) => child(axis, "delete")?.attributes.val === "0",
      );
      for (const axis of shown) expect(child(axis, "title"), titleOf(chart)).toBeDefined();
    }
  });
});

describe("what is found", () => {
  let bid: DemoBid;
  beforeAll(async () => {
    bid = await bidOf(demoJobs()[0] as string);
  }, 120_000);

  /** The bid with its styles or its book of sheets changed. */
  function changed(part: string, edit: (xml: string) => string): WorkbookContent {
    const parts = unzipSync(bid.bytes);
    const before = strFromU8(parts[part] as Uint8Array);
    expect(edit(before)).not.toBe(before);
    parts[part] = strToU8(edit(before));
    return readWorkbook(zipSync(parts, { level: 0 }), { look: true });
  }

  test("a pale text", () => {
    const pale = changed("xl/styles.xml", (xml) => xml.replaceAll("FF5B6B70", "FF9BABB0"));
    expect(readable(pale).faults).toEqual(
      expect.arrayContaining([expect.stringMatching(/: 9BABB0 on FFFFFF at .*, ratio 2/)]),
    );
  });

  test.each([
    ["on a sheet that is gone", "'Walks'!A1", "is on sheet Walks, which is not there"],
    ["to a name that is gone", "no_such_name", "is neither a cell nor a name of one"],
    ["to a hidden sheet", "'Workings'!A1", "is on sheet Workings, which is not in sight"],
  ])("a link %s", (_, target, says) => {
    expect(faultOf(readWorkbook(bid.bytes), target)).toBe(`${target} ${says}`);
  });

  test.each([
    ["000000", "FFFFFF", 21],
    ["FFFFFF", "000000", 21],
    ["777777", "FFFFFF", 4.48],
    ["FF0000", "FFFFFF", 4],
  ])("the contrast of %s on %s is %f", (one, other, ratio) => {
    expect(contrast(one, other)).toBeCloseTo(ratio, 2);
  });
});
