import {
  area,
  calc,
  count,
  length,
  published,
  type TableBlock,
  table,
  text,
  weight,
  yesno,
} from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";
import type { Lined } from "./lined.js";
import { kinds } from "./plans.js";

const { runs, falls, pools } = capacity;
/** The pieces that line one thing each; then the sheet down the stream, and that with the basin. */
const ownPieces = 1 + runs + falls + pools;
const courseRows = ownPieces + 2;

/** A basin alone is one piece. */
export const pieceRows = (lined: Lined): number => (lined === "basin" ? 1 : courseRows);

/** The last piece that is a run, and the last that is a fall's. */
const lastRun = 1 + runs;
const lastFall = lastRun + falls;

/** Row 1 is the basin, then the runs, the falls, the pools. */
const byKind =
  (
    basin: string,
    run: (k: number) => string,
    fall: (k: number) => string,
    pool: (k: number) => string,
    stream: string,
    both: string,
  ) =>
  (row: number) => {
    if (row > ownPieces) return row === courseRows ? both : stream;
    if (row === 1) return basin;
    if (row <= lastRun) return run(row - 1);
    if (row <= lastFall) return fall(row - lastRun);
    return pool(row - lastFall);
  };
const each = (one: string) => () => one;
const kindOf = byKind(kinds.basin, each(kinds.piece), each(kinds.piece), each(kinds.pool), kinds.stream, kinds.both);

const at = (column: string, k: number) => `INDEX(${column},${k})`;
const named = (column: string, kind: string) => (k: number) =>
  `IF(LEN(${at(column, k)})>0,${at(column, k)},"${kind} ${k}")`;

/** A pool is lined as dug, under its stone, up to its bank: depth, rise, bank above the water. */
const poolSide = (side: "length" | "width") => (k: number) =>
  `${at(`pools.${side}_counted`, k)}+2*channel_allowance+2*(${at("pools.depth_counted", k)}+bed_stone_depth+${at("pools.rise", k)}+freeboard)+2*edge_overlap`;

/** Across and along the roll, as the piece is laid on it. */
const across = "IF(turned,length,width)";
const along = "IF(turned,width,length)";
const costOf = (a: string, b: string) => `PIECE_COST(${a},${b},roll_width,roll_length,seam_lap,seam_worth)`;

/** What runs, falls and pools there are, and the sheets that cover several. */
const pieceOfCourse = `IF(place>${ownPieces},stream_sheet_length>0,PIECE_GIVEN(place,runs.length_counted,${lastRun},falls.lip_built,${lastFall},pools.length_counted,${ownPieces}))`;

export const linerPieces = (lined: Lined): TableBlock =>
  table(
    "liner_pieces",
    "Pieces and cuts",
    {
      rows: pieceRows(lined),
      data: Array.from({ length: pieceRows(lined) }, (_, i) => ({ place: i + 1, kind: kindOf(i + 1) })),
      filled: lined === "basin" ? "place=1" : pieceOfCourse,
      shown: "run>0",
      note: "Only the pieces of the plan taken are shown. Method: each piece is tried on every stocked roll, laid along and across, in lapped strips where it is wider and in lapped lengths where it is longer; the least liner, with seams counted as liner, is taken. Offcuts are not used again, so that the count never falls short.",
    },
    {
      name: calc(
        text,
        byKind(
          '"Basin"',
          named("runs.name", "Run"),
          named("falls.name", "Fall"),
          named("pools.name", "Pool"),
          '"Stream"',
          '"Stream and basin"',
        ),
        "Piece",
      ),
      length: calc(
        length,
        byKind(
          "basin_length+2*basin_depth+2*edge_overlap",
          (k) => `${at("runs.length_counted", k)}+2*fall_overlap`,
          (k) => `fall_overlap+${at("falls.drop_counted", k)}+MAX(fall_overlap,${at("falls.throw", k)}+splash_margin)`,
          poolSide("length"),
          "stream_sheet_length",
          "stream_sheet_length+basin_length+2*basin_depth+edge_overlap",
        ),
        "Length",
        {
          note: `Basin: length, both depths, both edges.${lined === "basin" ? "" : " Run: length and a lap at each end. Fall: lap over its lip, drop, then on the lower sheet as far as throw and splash. Pool: as the basin, up to its bank. Sheets: on sheet Liner."}`,
        },
      ),
      width: calc(
        length,
        byKind(
          "basin_width+2*basin_depth+2*edge_overlap",
          (k) =>
            `${at("channel_cuts.bottom", k)}+2*${at("channel_cuts.deep", k)}*SQRT(1+${at("runs.side", k)}^2)+2*edge_overlap`,
          (k) => `${at("falls.lip_built", k)}+2*(${at("falls.throw", k)}+splash_margin)+2*edge_overlap`,
          poolSide("width"),
          "stream_sheet_width",
          "MAX(stream_sheet_width,basin_width+2*basin_depth+2*edge_overlap)",
        ),
        "Width",
        lined === "basin"
          ? {}
          : {
              note: "Runs and pools as dug: bed and banks with the room for stone on the liner. A fall's sheet covers its throw and splash to each side as well.",
            },
      ),
      roll: calc(count, "IF(one_roll>0,one_roll,INDEX(liner_working.best,place))", "Roll, row", { working: true }),
      roll_width: calc(length, "IF(roll>0,INDEX(liner_rolls.width,roll),0)", "Roll width", { decimals: 1 }),
      turned: calc(yesno, `${costOf("length", "width")}<${costOf("width", "length")}`, "Laid across"),
      strips: calc(count, `STRIPS(${across},roll_width,seam_lap)`, "Strips"),
      parts: calc(count, `STRIPS(${along},roll_length,seam_lap)`, "Parts of a strip", { working: true }),
      cut_length: calc(length, `(${along}+(parts-1)*seam_lap)/parts`, "Length of a cut"),
      pieces: calc(count, "strips*parts", "Cuts"),
      in_plan: calc(
        yesno,
        byKind(
          "liner_plan_row<3",
          each("liner_plan_row=1"),
          each("liner_plan_row=1"),
          each("OR(liner_plan_row=1,AND(liner_plan_row=2,NOT(pools_in_sheet)))"),
          "liner_plan_row=2",
          "liner_plan_row=3",
        ),
        "In the plan taken",
        { working: true },
      ),
      run: calc(length, "IF(in_plan,pieces*cut_length,0)", "Off the roll"),
      rank: calc(count, "IF(in_plan,roll*1000+place,0)", "Order of cutting", { working: true }),
      ...(lined === "course" && {
        in_stream: calc(
          length,
          byKind("0[ft]", each("width"), each("width"), each("IF(pools_in_sheet,width,0)"), "0[ft]", "0[ft]"),
          "Width in the stream's sheet",
          { working: true },
        ),
      }),
      bought: calc(area, "pieces*cut_length*roll_width", "Liner used"),
      seam: calc(length, `SEAM_OF(${across},${along},strips,parts)`, "Seam"),
      weight: calc(weight, "IF(in_plan,cut_length*roll_width*liner_area_weight,0)", "Weight of a cut", {
        note: "As cut from the roll, before trimming and seaming: what people carry in.",
      }),
      roll_length: calc(length, "IF(roll>0,INDEX(liner_rolls.roll_length,roll),0)", "Roll length", {
        decimals: 0,
      }),
      place: published(count, "No.", { source: "order of the sheets" }),
      kind: published(text, "Kind", { source: "order of the sheets" }),
    },
  );
