import {
  type Block,
  calc,
  count,
  lines,
  panel,
  row,
  type TableBlock,
  table,
  text,
} from "../../../engine/template/index.js";

const crew = { reader: "crew" } as const;

/** The last line in use: as many rows the crew's table shows. */
export const linesCounted = ({ rows, filled = "TRUE" }: TableBlock): readonly Block[] => [
  table(
    "lines_numbered",
    "Lines in use",
    { rows, beside: "pipe_lines", filled },
    { number: calc(count, (at) => String(at), "Row") },
  ),
  lines("Last line", { lines_told_count: calc(count, "MAX(lines_numbered.number)", "Last line in use") }),
];

/** The lines as they leave the manifold: what to lay, how its valve is set, what flow to see. */
export const linesTold = ({ rows, filled = "TRUE" }: TableBlock, told: string): readonly Block[] => [
  panel([row(6)]),
  table(
    "lines_told",
    "",
    {
      rows,
      beside: "pipe_lines",
      filled,
      paper: {
        header: true,
        size: 9,
        spare: 0,
        used: "lines_told_count",
        across: { line: [1, 3], pipe: [4, 1], long: [5, 1], fittings: [6, 3], valve: [9, 2], flow: [11, 2] },
      },
    },
    {
      line: calc(text, told, "Line from the manifold"),
      pipe: calc(text, "pipe_size", "Pipe"),
      long: calc(text, "~{length}", "Long", crew),
      fittings: calc(
        text,
        '~{tee}, {elbows_90|0} × 90°{IF(elbows_45>0,", "&FIXED(elbows_45,0)&" × 45°","")}',
        "Leaves by, elbows",
      ),
      valve: calc(text, "valve_words", "Valve"),
      flow: calc(text, "~{actual_flow|0}", "Flow to see", crew),
    },
  ),
];
