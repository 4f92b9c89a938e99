import { unprinted } from "../../../engine/template/index.js";
import { bullet, under } from "../../plan/page-line.js";
import { item } from "../goods.js";
import { part } from "../part.js";
import { production } from "../rates.js";
import { task } from "../task.js";
import { fillLine as fillLineBlock } from "./fill-line.js";

export const fillLine = part("Fill line", "Water made up for what evaporates and splashes.", {
  blocks: { Basin: [(all) => unprinted(fillLineBlock(all))] },
  buys: {
    Basin: [
      {
        what: "fill valve",
        code: "fill_valve_code",
        wanted: "IF(fill_line_length>0,1,0)",
        unit: "each",
        said: "fill_bore_said",
      },
      {
        what: "fill pipe",
        code: "fill_pipe_code",
        wanted: "fill_line_length",
        unit: "ft",
        said: "fill_bore_said",
      },
    ],
  },
  trenches: [{ trench: "fill line", kind: "narrow", pipe: "fill_line_length", bedding: 0, width: 6, depth: 12 }],
  items: [item("fill-valve", "fill valve with backflow preventer", "each", 150), item("fill-pipe", "fill pipe", "ft")],
  tasks: [
    task("Lay the fill line", "pipe", "fill_line_length", production("fill-line-laid", "Lay the fill line", "ft", 40)),
  ],
  handOver: [
    bullet(
      "run",
      "The fill valve tops the water up by itself. Its shut-off, where its line leaves the house supply, is at:\u00a0____________",
      "fill_line_length>0",
    ),
    bullet(
      "run",
      "There is no automatic fill: top up with a hose, and do not leave it in the water.",
      "fill_line_length<=0",
    ),
  ],
  crew: [
    ...under(
      "Lay the fill line",
      bullet(
        "step: pipe",
        "Fill line: {fill_line_length} of pipe; its mouth {air_gap|up} above the rim, so that nothing is drawn back.",
        "fill_line_length>0",
      ),
    ),
  ],
  proposal: [
    bullet(
      "supply",
      "An automatic fill line, made so that basin water cannot get back into your drinking water.",
      "fill_line_length>0",
    ),
  ],
});
