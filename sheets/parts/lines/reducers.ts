import { calc, count, lines, published, table, text } from "../../../engine/template/index.js";
import { branchSizes } from "./pipe-lines.js";

/** Bushings where a line is of another size than the main, by the line's size. */
const bySize = table(
  "reducers",
  "Reducer bushings, by size",
  { rows: branchSizes.length, data: branchSizes.map((size) => ({ size })) },
  {
    size: published(text, "Size of the lines", { source: "the sizes of pipe on sheet Materials" }),
    lines: calc(count, "IF(size=main_size,0,COUNT_WHERE(pipe_lines.pipe_size,size))", "Lines"),
    said: calc(text, 'IF(lines>0,"to "&size&": "&FIXED(lines,0),"")', "As ordered"),
  },
);

/** Which bushings they are: a supplier asks. */
export const reducersSaid = [
  bySize,
  lines("Wording of the bushings", {
    reducers_said: calc(
      text,
      'JOINED("from "&main_size&", ",TEXTJOIN(", ",TRUE,reducers.said))',
      "Bushings, as ordered",
    ),
  }),
];
