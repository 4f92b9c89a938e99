import { area, calc, length, percent, published, spaceVolume, table, text } from "../../../engine/template/index.js";

interface Measure {
  readonly name: string;
  /** One of the three: a length on which a course lies, a face, or a room. */
  readonly along?: string;
  readonly face?: string;
  readonly room?: string;
  /** Its share in one spot, which no stone goes beyond: one lip stone, one side of one fall, one bank of one run. */
  readonly spot?: string;
}

const shareOf = (one: string) => `IF(along>0,${one}/along,0)`;

/** What stone can cover, by the geometry of the job. Both banks count, and both shoulders of each level. */
const measures: readonly Measure[] = [
  { name: "lips", along: "lip_length", spot: shareOf("MAX(lip_said.lip_stone)") },
  { name: "fall faces", face: "fall_face" },
  { name: "back walls", face: "back_wall" },
  {
    name: "fall shoulders",
    along: "shoulder_height",
    spot: shareOf("MAX(levels.drop)"),
  },
  {
    name: "bank edges",
    along: "2*SUM(runs.length_counted)",
    spot: shareOf("MAX(runs.length_counted)"),
  },
  { name: "bank faces", face: "2*SUMPRODUCT(runs.length_counted*runs.bank_counted*(1+runs.side^2)^0.5)" },
  // half the way round an oval is about 0.785 of the sum of its axes
  {
    name: "pool edges",
    along: "1.57*SUMPRODUCT((pools.length_counted>0)*(pools.length_counted+pools.width_counted))",
    spot: shareOf("MAX(pools.length_counted)"),
  },
  {
    name: "berm toes",
    along: "SUMPRODUCT((berms.height>0)*(berms.length+2*berms.end_slope*berms.height))",
  },
  { name: "basin top", face: "basin_plan" },
  { name: "basin fill", room: "basin_stone_volume" },
  { name: "stream bed" },
  { name: "own size" },
];

export const measureNames = measures.map(({ name }) => name);

export const stoneMeasures = table(
  "stone_measures",
  "What stone covers",
  { working: true, rows: measures.length, data: measures.map(({ name }) => ({ name })) },
  {
    name: published(text, "Measure", { source: "the list of measures of this template" }),
    along: calc(length, (row) => measures[row - 1]?.along ?? "0[ft]", "Length"),
    face: calc(area, (row) => measures[row - 1]?.face ?? "0[ft²]", "Face"),
    room: calc(spaceVolume, (row) => measures[row - 1]?.room ?? "0[ft³]", "Room"),
    spot: calc(percent, (row) => measures[row - 1]?.spot ?? "1", "Share in one spot", {
      note: "One stone of a lip, one side of a fall, one bank of a run: a stone there is no heavier than what the spot takes.",
    }),
  },
);
