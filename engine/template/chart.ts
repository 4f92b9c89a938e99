/** How a line is drawn: by weight and dash, so that lines are told apart without color. */
export type LineLook = "plain" | "heavy" | "broad" | "dashed" | "dotted" | "long dashes" | "fine";

/** Where the text of a point stands, seen from the point. */
export type LabelPlace = "above" | "below" | "left" | "right" | "center";

/**
 * What a chart draws of some cells. Its points are the rows of two columns (`curve.speed`,
 * `curve.height`), or one point of two single cells (`total_cost`).
 *
 * - `line`: a line through the points; `points`: a mark at each
 * - `names`: no mark, the text of `says` at each point; where a text is blank, nothing shows
 * - `frame`: nothing, but the axes reach as far as these points: two corners keep a drawing to scale
 * - `bars`: a bar for each row, beside those of other series; `stack`: on top of them
 */
export interface Series {
  /** What the legend says. */
  readonly label: string;
  readonly x: string;
  readonly y: string;
  readonly marks: "line" | "points" | "names" | "frame" | "bars" | "stack";
  /** Of a line; each has its own by its place among the series, unless told. */
  readonly look?: LineLook;
  /** Texts at the points: a column of as many rows, or a single cell. Of bars: their figures, with `true`. */
  readonly says?: string | true;
  /** Where these texts stand: above, unless told. */
  readonly at?: LabelPlace;
  /** `false` leaves it out of the legend. */
  readonly legend?: false;
}

/** What may be told of a chart besides its series. */
export interface ChartOptions {
  /** What it shows, for people who cannot see it. */
  readonly alt?: string;
  /** Lines of the worksheet that it covers. */
  readonly lines?: number;
  /** Width of the drawn area over its height, for drawings to scale; as large as fits, without it. */
  readonly ratio?: number;
  /** Charts that stand at its right, on the same lines; all are equally wide. */
  readonly beside?: readonly ChartBlock[];
  /** Axes that show neither line nor figures nor title. */
  readonly without?: readonly ("across" | "up")[];
  /** `false`: below all that is printed of its sheet. */
  readonly printed?: false;
  /** Shown on the sheet Summary as well. */
  readonly summary?: true;
}

/** A chart that lives in the workbook and follows its cells. */
export interface ChartBlock extends ChartOptions {
  readonly kind: "chart";
  /** The title. */
  readonly heading: string;
  readonly across: string;
  readonly up: string;
  readonly series: readonly Series[];
}

/** A chart and those beside it, from the left. */
export const chartsOf = (block: ChartBlock): readonly ChartBlock[] => [
  block,
  ...(block.beside ?? []),
];

/**
 * A native chart of the workbook, which follows its cells.
 *
 * @param across the title of the horizontal axis, without its unit, which the workbook adds
 * @param up the title of the vertical axis, likewise
 */
export const chart = (
  heading: string,
  across: string,
  up: string,
  series: readonly Series[],
  options: ChartOptions = {},
): ChartBlock => Object.freeze({ kind: "chart", heading, across, up, series, ...options });

/** Whether a series is drawn as bars. */
export const isBar = ({ marks }: Series): boolean => marks === "bars" || marks === "stack";
