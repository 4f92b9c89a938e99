/** The words of the house, for newcomers of either trade: labels and names use these and no other. */
export interface Term {
  readonly term: string;
  readonly means: string;
  /** Words that said the same once, and are not used in labels or in what checks say. */
  readonly not: readonly string[];
}

const term = (name: string, means: string, ...not: readonly string[]): Term => ({
  term: name,
  means,
  not,
});

export const glossary: readonly Term[] = [
  term("level", "One height of standing water in the water course; level 1 is the top.", "step"),
  term("lip", "The edge that the water falls over."),
  term("drop", "Height from upper to lower water at a fall."),
  term("throw", "How far the water lands from its lip.", "leap"),
  term("look", "What the customer is promised to see: a thin, normal, full or heavy sheet."),
  term("sheet thickness", "Thickness of the falling water where it leaves the lip.", "brink"),
  term("run", "A stretch of stream between two falls.", "reach", "reaches"),
  term("freeboard", "Height from full water up to the bank or the rim."),
  term("line", "A pipe from the manifold to its outlet, with its own ball valve.", "branch"),
  term("outlet", "The open end of a line."),
  term("main", "The pipe from the pump to the manifold."),
  term("manifold", "The fittings that part the main into lines."),
  term("inlet fitting", "What the main begins with."),
  term("design flow", "The flow that a look asks for.", "flow wanted"),
  term("actual flow", "The flow that runs at the pump's speed and the valve settings.", "as set"),
  term("override", "An input that takes the place of a calculated figure.", "if chosen"),
  term("valve setting", "Degrees that a ball valve is turned from open.", "turn from open"),
  term("excess head", "Head that a line does not need, and its valve takes away.", "to burn"),
  term("TDH", "Total dynamic head: what the pump must give at design flow.", "head wanted"),
  term("drain-back", "Water that runs back to the basin when the pump stops."),
  term("below pump minimum", "Basin water that the pump must not draw.", "dead water"),
  term("in place", "Earth measured where it lies before it is dug.", "bank measure"),
  term("man-hour", "One person's work for an hour.", "hours of one person"),
  term("mobilization", "Bringing crew and machines to the site and back."),
  term("draw", "A part of the price, due at a stage of the work."),
  term(
    "office book",
    "The office's workbook of what holds for every job: company, rules, prices, rates, weather.",
    "price book",
  ),
];

/** Words that no label and no sentence of a check says, whatever they speak of. */
export const neverSaid: readonly string[] = [
  ...["in all", "reckoned", "anew", "besides", "mind", "say yes", "hungriest"],
  ...["neighbour", "neighbouring", "grey", "modelled", "centre", "vapour", "colour", "metre"],
];
