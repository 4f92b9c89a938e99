import { describe, expect, test } from "vitest";
import { lines, number, published } from "../../../engine/template/index.js";
import { sheetsOf } from "../../../sheets/parts/assemble.js";
import { item } from "../../../sheets/parts/goods.js";
import { part } from "../../../sheets/parts/part.js";
import { hire, production } from "../../../sheets/parts/rates.js";
import { task } from "../../../sheets/parts/task.js";
import { wholeOf } from "../../../sheets/parts/whole.js";
import { bullet } from "../../../sheets/plan/page-line.js";

const figure = (name: string) =>
  lines(name, { [name]: published(number, name, { value: 1, source: "invented" }) });

const digging = part("Digging", "Invented.", {
  blocks: { Earthwork: [figure("dug")] },
  below: { Earthwork: [figure("cautions")] },
  tasks: [
    task("Fill", "backfill", "1", production("fill", "Fill", "yd³", 2)),
    task("Dig", "dig", "1", production("dig", "Dig", "yd³", 2)),
  ],
  rates: [hire("truck", "Truck", "$/load")],
  items: [item("sand", "sand", "yd³")],
  crew: [bullet("step: haul", "Haul."), bullet("step: dig", "Dig.")],
});
const shoring = part("Shoring", "Invented.", {
  blocks: { Earthwork: [({ tasks }) => figure(`tasks_${tasks.length}`)], Basin: [figure("held")] },
  tasks: [task("Shore", "dig", "1", production("dig", "Dig", "yd³", 2))],
  takeoff: [{ what: "bag for ‹4 ft|1.2 m›", code: "bag", wanted: "1", unit: "each" }],
});
const parts = [digging, shoring];
const whole = wholeOf(parts);

describe("what parts bring together", () => {
  test("tasks stand in the order of building, then in that of the parts", () => {
    expect(whole.tasks.map(({ task: name }) => name)).toEqual(["Dig", "Shore", "Fill"]);
  });

  test("rates come with the tasks, each once, group by group", () => {
    expect(whole.rates.map(({ code, unit }) => [code, unit])).toEqual([
      ["fill", "yd³/hour"],
      ["dig", "yd³/hour"],
      ["truck", "$/load"],
    ]);
  });

  test("items come with the takeoff", () => {
    expect(whole.items.map(({ code, description }) => [code, description])).toEqual([
      ["sand", "sand"],
      ["bag", "bag for 4 ft"],
    ]);
  });

  test("a code of two meanings is refused, with both", () => {
    const other = part("Other", "Invented.", { items: [item("sand", "sand", "ton")] });
    expect(() => wholeOf([digging, other])).toThrow(
      /code "sand" with different meanings.*yd³.*ton/,
    );
  });

  test("lines of a page stand section by section, under its heading", () => {
    const said = whole.crew.map(({ says }) => says);
    const of = (words: string) => said.findIndex((one) => one.includes(words));
    expect(of("Before the first shovel")).toBeLessThan(of("Dig."));
    expect(of("Dig.")).toBeLessThan(of("Haul."));
  });

  test("sheets in the order of the plan, what is made of the whole in them, the foot last", () => {
    const headings = sheetsOf(parts).map(({ name, blocks }) => [
      name,
      ...blocks.map((block) => block.heading),
    ]);
    expect(headings).toEqual([
      ["Basin", "held"],
      ["Earthwork", "dug", "tasks_3", "cautions"],
    ]);
  });
});
