import { calc, check, decide, flow, head, smallLength, text, yesno } from "../../../engine/template/index.js";
import type { LineEnds } from "../line-ends.js";

const stops = ["nothing", "check valve", "air break"] as const;

const ofStone = (column: string) => (row: number) => `INDEX(bubblers.${column},${row})`;
const held = '(siphon_stop="nothing")';

/** Lines that end at stones and urns: each at that of its row. */
export const toStones: LineEnds = {
  section: "Lines",
  note: "Each line goes to the stone or urn of its row, and is in use once its pipe size is chosen on sheet Decisions. Each has a ball valve.",
  told: "used>0",
  beside: "bubblers",
  first: {
    name: calc(text, (row) => `${ofStone("name")(row)}&""`, "Line to"),
  },
  inputs: {
    siphon_stop: decide(text, "Siphon stopped by", {
      default: stops[0],
      choices: stops,
      note: "At a stop an urn's line draws its water off, down to the line's mouth, unless a check valve in the line or an air break stops that. In a drilled stone only the pipe itself runs empty.",
    }),
    end_below_water: decide(smallLength, "Mouth below urn's rim", {
      optional: true,
      least: 0,
      most: 144,
      note: "Of an urn's line. Blank: at its bottom, so that all of its water drains.",
    }),
    measured_height: decide(head, "Measured height", {
      optional: true,
      least: 0,
      most: 500,
      note: "Of the water's top above the running basin water. Blank: rim, base, stone and look added up.",
    }),
    override_flow: decide(flow, "Override flow", {
      optional: true,
      least: 0,
      most: 2000,
      note: "Blank: that of the look, with its allowance.",
    }),
  },
  flowAndHeight: {
    fixed_flow: calc(flow, "IF(ISBLANK(override_flow),0,override_flow)", "Fixed flow", { zero: "–" }),
    design_flow: calc(
      flow,
      (row) => `IF(ISBLANK(override_flow),${ofStone("design_flow")(row)},fixed_flow)`,
      "Design flow",
      { strong: true },
    ),
    calculated_height: calc(head, ofStone("lift"), "Calculated height"),
    is_measured: calc(yesno, "NOT(ISBLANK(measured_height))", "Measured"),
    height: calc(head, "IF(is_measured,measured_height,calculated_height)", "Height above basin water"),
  },
  vessel: "Urn",
  water: "urn",
  vesselArea: ofStone("urn_surface"),
  vesselDeep: ofStone("urn_deep"),
  openDeep: "0[in]",
  inTheOpen: "pot_water<=0",
  mouthUnder: "pot_water>0",
  words: {
    drawn_said: calc(text, "~{siphon_depth|down}", "Depth of mouth, in words", { reader: "crew" }),
    drawn_words: calc(
      text,
      'IF(siphons,"its mouth "&drawn_said&" below the urn\'s rim, no deeper: a stop draws the urn down to it","")',
      "Drawn at a stop, said",
    ),
    kept_words: calc(
      text,
      `IF(OR(siphons,${held}),"","fit the "&siphon_stop&", so that the urn stays full")`,
      "Urn kept full, said",
    ),
    siphon_words: calc(text, 'IF(OR(shut,pot_water<=0),"",drawn_words&kept_words)', "Siphon stop for crew"),
  },
  endChecks: {},
  siphonChecks: {
    siphon_counted: calc(yesno, "TRUE", "Siphoned water counted", {
      working: true,
      blank: "TRUE",
      note: "Only an urn is drawn off, and its water is counted.",
    }),
    urn_kept: check(
      "OR(pot_water<=0,siphon_depth<=0.5*pot_deep)",
      "{name}: a stop draws {pot_siphoned} out of its urn. Choose what stops that in pipe_lines on sheet Decisions.",
      { label: "Urn drained at a stop", level: "look" },
    ),
  },
  flowChecks: {},
  someLines: "enter a stone on sheet Walk, and the pipe size of its line on sheet Decisions",
  heightSums: "rim, base, stone and look make {calculated_height}",
  drawn: {},
  toldAs: "~{name}",
  behind: [],
  crew: () => [],
  fitted: () => [],
  proposal: () => [],
};
