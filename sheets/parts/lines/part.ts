import { bullet, bulletEachRow, eachRow, under } from "../../plan/page-line.js";
import { valveOpening } from "../../tables/valve-opening.js";
import { pipeFormulas } from "../../vocabulary/pipe.js";
import { valveFormulas } from "../../vocabulary/valve.js";
import { pipeLaid } from "../main/laying.js";
import { part } from "../part.js";
import { production } from "../rates.js";
import { task } from "../task.js";
import { manifold, manifoldPoints } from "./drawing.js";
import { linesCounted, linesTold } from "./lines-told.js";
import { pipeLines, sizeFormulas } from "./pipe-lines.js";
import { pipeLinesTable } from "./pipe-lines-table.js";
import { pipingBlocks, pipingNotes } from "./piping.js";

export const lines = part("Lines", "The lines from the manifold to the falls, with their valves.", {
  section: "Lines and pots",
  blocks: {
    Piping: [manifold, ...pipingBlocks],
    Drawings: [manifold],
    "Drawing points": [...manifoldPoints, ...linesCounted],
  },
  below: { Piping: [pipingNotes], "Water tables": [valveOpening] },
  formulas: [...pipeFormulas, ...valveFormulas, ...sizeFormulas],
  takeoff: [
    ...pipeLines,
    {
      what: "reducer bushings, main to line",
      code: "reducer",
      wanted: "SUMPRODUCT((pipe_lines.bore>0)*(pipe_lines.pipe_size<>main_size))",
      unit: "each",
    },
    {
      what: "air breaks, to stop a siphon",
      code: "air-break",
      wanted: 'SUMPRODUCT((pipe_lines.siphon_stop="air break")*(pipe_lines.bore>0))',
      unit: "each",
    },
    {
      what: "pipe cement, a can for each 25 joints",
      code: "adhesive",
      wanted: "pipe_joints/25",
      unit: "each",
    },
  ],
  tasks: [
    task("Lay the lines", "pipe", "SUM(pipe_lines.length)", pipeLaid),
    task(
      "Fit outlets and valves",
      "pipe",
      "SUMPRODUCT((pipe_lines.bore>0)*1)",
      production("outlet-fitted", "Fit an outlet with its valve", "each", 0.6),
    ),
  ],
  crew: [
    ...eachRow(
      "stop: water",
      pipeLinesTable,
      "STOP. What a stop draws off through {name} is not counted: the basin may spill. Set no fill float before the office has entered what that line ends in.",
      { when: "NOT(siphon_counted)" },
    ),
    ...under(
      "Lay the lines",
      bullet(
        "step: pipe",
        "As in the table of lines. A smaller line: reducer bushing at its tee, the valve behind it.",
      ),
    ),
    ...under(
      "Fit outlets and valves",
      ...bulletEachRow("step: pipe", pipeLinesTable, "{name}: {siphon_words}.", {
        when: "LEN(siphon_words)>0",
      }),
      ...bulletEachRow(
        "step: pipe",
        pipeLinesTable,
        "{name}: set its pot so that its water stands {pot_rise} above the water of level {outlet_level|0}.",
        { when: "pot_rise>0" },
      ),
      bullet("step: pipe", "Bulkhead gasket on the water side; sweep of a tee along the flow."),
    ),
  ],
  crewDrawings: linesTold,
  proposal: bulletEachRow(
    "scope",
    pipeLinesTable,
    "{name}: here the water rises in a small open basin of about {pot_surface|0}, up to {pot_depth|0|up} deep.",
    { when: "pot_surface*pot_depth>0" },
  ),
  handOver: bulletEachRow(
    "valves",
    pipeLinesTable,
    "Line {name} (planned: {valve_words}, {actual_flow|0}). Set:\u00a0________  Metered:\u00a0________",
  ),
});
