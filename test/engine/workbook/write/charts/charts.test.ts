import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { valuesOf } from "../../../../../engine/book/values.js";
import { calculate } from "../../../../../engine/evaluate/calculate.js";
import { compile } from "../../../../../engine/template/compile.js";
import { readWorkbook } from "../../../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../../../engine/workbook/write/write.js";
import {
  cachedIn,
  chartsIn,
  child,
  drawingsIn,
  type Element,
  misplaced,
  titleOf,
  within,
} from "../../../../support/chart-parts.js";
import { charted } from "../../../../support/charted.js";
import { toyBook, toyIdentity, toyJob } from "../../../../support/toy.js";

const model = compile(charted, "us");
const values = calculate(model, valuesOf(model, toyJob, toyBook));
const bytes = await writeWorkbook(model, values, toyIdentity);
const charts = [...chartsIn(bytes).values()];
const titled = (title: string): Element =>
  charts.find((chart) => titleOf(chart) === title) as Element;

describe("charts in a workbook", () => {
  it("are as many as declared, and those for the first sheet once more", () => {
    expect(charts.map(titleOf).sort()).toEqual([
      "Beds & edging",
      "Edging",
      "Edging",
      "Soil",
      "To scale",
    ]);
    const look = readWorkbook(bytes, { look: true });
    expect(look.sheets.find(({ name }) => name === "Summary")?.look?.drawn).toHaveLength(1);
  });

  it("have their elements in the order of the standard", () => {
    const all = [...charts, ...drawingsIn(bytes).values()];
    expect(all.flatMap((one) => misplaced(one))).toEqual([]);
  });

  it("the same job gives the same bytes", async () => {
    expect(await writeWorkbook(model, values, toyIdentity)).toEqual(bytes);
  });

  it("draw what hidden rows hold", () => {
    for (const chart of charts) {
      expect(within(chart, "plotVisOnly").map(({ attributes }) => attributes.val)).toEqual(["0"]);
    }
  });

  it("have words for people who cannot see them", () => {
    const said = [...drawingsIn(bytes).values()].flatMap((one) => within(one, "cNvPr"));
    expect(said.map(({ attributes }) => attributes.descr).sort()).toEqual([
      "Beds & edging. Wide, Each.",
      "Edging. Cost.",
      "Edging. Cost.",
      "Soil. Soil, So far.",
      "To scale. An outline.",
    ]);
  });
});

describe("a series", () => {
  it("refers to cells of the workbook, whose values it has cached", () => {
    const content = readWorkbook(bytes);
    for (const { formula, count, points } of charts.flatMap(cachedIn)) {
      const [, sheet, letters, from, to = from] =
        /^'([^']+)'!\$([A-Z]+)\$(\d+)(?::\$[A-Z]+\$(\d+))?$/.exec(formula) ?? [];
      expect(count, formula).toBe(Number(to) - Number(from) + 1);
      for (let i = 0; i < count; i++) {
        const found = content.sheets
          .find(({ name }) => name === sheet)
          ?.cells.get(`${letters}${Number(from) + i}`)?.value;
        expect(points.get(i), `${formula} ${i}`).toBe(String(found ?? ""));
      }
    }
  });

  it("has a text at each point where texts are told, which the legend leaves out", () => {
    const chart = titled("Beds & edging");
    const series = within(chart, "ser");
    // a line, points with four texts, four names, one point
    expect(series).toHaveLength(1 + 1 + 4 + 4 + 1);
    expect(within(chart, "legendEntry").map((one) => child(one, "idx")?.attributes.val)).toEqual(
      [2, 3, 4, 5, 6, 7, 8, 9, 10].map(String),
    );
    expect(child(series[2], "tx")?.inside[0]?.name).toBe("strRef");
    expect(within(series[2] as Element, "showSerName")[0]?.attributes.val).toBe("1");
    expect(within(series[6] as Element, "dLblPos")[0]?.attributes.val).toBe("l");
  });

  it("of bars shows its figures, where told, in their own format", () => {
    const [bars] = within(titled("Edging"), "dLbls");
    expect(child(bars, "numFmt")?.attributes.formatCode).toBe('"$"#,##0;-"$"#,##0;');
    expect(within(titled("Soil"), "grouping")[0]?.attributes.val).toBe("stacked");
  });
});

it("a drawing to scale has the ratio told, whatever the widths of columns", () => {
  const chart = titled("To scale");
  const [w, h] = ["w", "h"].map((one) => Number(within(chart, one)[0]?.attributes.val));
  const frame = [...drawingsIn(bytes).values()]
    .flatMap((one) => within(one, "oneCellAnchor"))
    .find((one) => within(one, "cNvPr")[0]?.attributes.descr?.startsWith("To scale"));
  const { cx, cy } = child(frame, "ext")?.attributes ?? {};
  expect(((w as number) * Number(cx)) / ((h as number) * Number(cy))).toBeCloseTo(2, 2);
  expect(within(chart, "valAx").map((one) => child(one, "delete")?.attributes.val)).toEqual([
    "0",
    "1",
  ]);
});

it("axes are titled with their units", () => {
  expect(within(titled("Beds & edging"), "valAx").map((one) => within(one, "t")[0]?.text)).toEqual([
    "Width",
    "Height, ft²",
  ]);
});

it("charts stand beside pictures in one drawing", () => {
  const parts = unzipSync(bytes);
  for (const [name, part] of Object.entries(parts)) {
    if (!/^xl\/worksheets\/sheet\d+\.xml$/.test(name)) continue;
    expect(strFromU8(part).match(/<drawing /g)?.length ?? 0, name).toBeLessThanOrEqual(1);
  }
});
