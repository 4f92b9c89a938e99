import type { Block, CellDeclaration, TableBlock } from "../../engine/template/index.js";
import type { CrewSection } from "../plan/crew-page.js";
import type { PlacedLine } from "../plan/page-line.js";
import type { ProposalSection } from "../plan/proposal-page.js";

type Columns = Readonly<Record<string, CellDeclaration>>;
type ByRow = (row: number) => string;

/**
 * Where the lines of a water feature end: at the level of a fall, at a stone. It says what a line is told of its
 * end, what flow is wanted there, how high it stands, and what water it could draw off; pipe, loss and valve are
 * those of any line.
 */
export interface LineEnds {
  /** The section in which lines are decided. */
  readonly section: string;
  readonly note: string;
  /** A condition on a row: it is told where its line ends. */
  readonly told: string;
  /** The table beside which the lines stand, row by row; none where a line names its end itself. */
  readonly beside?: string;
  /** The first columns of a line: its name, and which end. */
  readonly first: Columns;
  /** Inputs of the end, after pipe and fittings. */
  readonly inputs: Columns;
  /** From `fixed_flow` and `design_flow` to `is_measured` and `height`. */
  readonly flowAndHeight: Columns;
  /** A vessel that a line may end in, and any such water, in words. */
  readonly vessel: string;
  readonly water: string;
  /** Water that the line ends in: its surface and depth, where it is a vessel of its own, else the depth there. */
  readonly vesselArea: ByRow;
  readonly vesselDeep: ByRow;
  readonly openDeep: string;
  /** Conditions: it ends in the open; its mouth is under water. */
  readonly inTheOpen: string;
  readonly mouthUnder: string;
  /** Up to `siphon_words`: what the crew is told of its end. */
  readonly words: Columns;
  /** Checks of its own, in their places. */
  readonly endChecks: Columns;
  readonly siphonChecks: Columns;
  readonly flowChecks: Columns;
  /** What somebody without any line is told to do. */
  readonly someLines: string;
  /** Where a measured height that disagrees is mended, and what it was held against. */
  readonly heightSums: string;
  /** Columns of the drawing of the manifold that other drawings go on from. */
  readonly drawn: Columns;
  /** The line in the crew's table, as a sentence. */
  readonly toldAs: string;
  /** What stands behind the table of lines on sheet Piping. */
  readonly behind: readonly Block[];
  readonly crew: (lines: TableBlock) => readonly PlacedLine<CrewSection>[];
  /** Beside the outlets and valves as they are fitted. */
  readonly fitted: (lines: TableBlock) => readonly PlacedLine<CrewSection>[];
  readonly proposal: (lines: TableBlock) => readonly PlacedLine<ProposalSection>[];
}
