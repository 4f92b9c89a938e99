import { bullet, bulletEachRow, under } from "../../plan/page-line.js";
import { valveOpening } from "../../tables/valve-opening.js";
import { pipeFormulas } from "../../vocabulary/pipe.js";
import { valveFormulas } from "../../vocabulary/valve.js";
import type { LineEnds } from "../line-ends.js";
import { pipeLaid } from "../main/laying.js";
import { type Part, part } from "../part.js";
import { production } from "../rates.js";
import { task } from "../task.js";
import { manifold, manifoldPoints } from "./drawing.js";
import { linesCounted, linesTold } from "./lines-told.js";
import { pipeLines, sizeFormulas } from "./pipe-lines.js";
import { pipeLinesTable } from "./pipe-lines-table.js";
import { allLines, pipingNotes } from "./piping.js";
import { reducersSaid } from "./reducers.js";
import { toFalls } from "./to-falls.js";

/** The lines of a water feature, to its ends. */
export const linesTo = (ends: LineEnds): Part => {
  const table = pipeLinesTable(ends);
  // beside another table, its condition reads columns that only stand there
  const inUse = { ...table, filled: ends.beside === undefined ? (table.filled ?? "TRUE") : "bore>0" };
  return part("Lines", "The lines from the manifold to where the water comes out, with their valves.", {
    section: ends.section,
    blocks: {
      Piping: [manifold, ({ added }) => pipeLinesTable(ends, added("line fittings")), ...ends.behind, allLines(ends)],
      Drawings: [manifold],
      "Drawing points": [...manifoldPoints(ends), ...linesCounted(inUse)],
      Wording: reducersSaid,
    },
    below: { Piping: [pipingNotes], "Water tables": [valveOpening] },
    formulas: [...pipeFormulas, ...valveFormulas, ...sizeFormulas],
    adds: { given: "LEN(INDEX(pipe_lines.pipe_size,1))>0" },
    takeoff: [
      ...pipeLines,
      {
        what: "reducer bushings, main to line",
        code: "reducer",
        wanted: "SUMPRODUCT((pipe_lines.bore>0)*(pipe_lines.pipe_size<>main_size))",
        unit: "each",
        said: "reducers_said",
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
      ...ends.crew(table),
      ...under(
        "Lay the lines",
        bullet(
          "step: pipe",
          "As in the table of lines. A smaller line: reducer bushing at its tee, the valve behind it.",
        ),
      ),
      ...under(
        "Fit outlets and valves",
        ...bulletEachRow("step: pipe", table, "{name}: {siphon_words}.", {
          when: "LEN(siphon_words)>0",
        }),
        ...ends.fitted(table),
        bullet("step: pipe", "Bulkhead gasket on the water side; sweep of a tee along the flow."),
      ),
    ],
    crewDrawings: linesTold(inUse, ends.toldAs),
    proposal: ends.proposal(table),
    handOver: bulletEachRow(
      "valves",
      inUse,
      "{called} (planned: {valve_words}, {actual_flow|0}). Set:\u00a0________  Metered:\u00a0________",
    ),
  });
};

/** The lines of a waterfall. */
export const lines = linesTo(toFalls);
