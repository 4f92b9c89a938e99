import { area, columnOf, count, formula, length, number, text, weight, yesno } from "../../engine/template/index.js";

const geometry = "geometry: n strips cover n widths less n - 1 laps";

const STRIPS = formula(
  "STRIPS",
  "How many strips of a roll, lapped at the seams, cover a size",
  { size: length, roll: length, lap: length },
  count,
  "IF(roll>lap,MAX(1,WHOLE_UP((size-lap)/(roll-lap))),1)",
  geometry,
);

const SEAM_OF = formula(
  "SEAM_OF",
  "Length of the seams of a piece",
  { across: length, along: length, strips: count, parts: count },
  length,
  "(strips-1)*along+(parts-1)*across",
  geometry,
);

const STRIPS_COST = formula(
  "STRIPS_COST",
  "Liner that a piece of so many strips, each of so many parts, takes, with its seams counted as liner",
  { across: length, along: length, roll: length, lap: length, worth: length, strips: count, parts: count },
  area,
  "strips*(along+(parts-1)*lap)*roll+worth*SEAM_OF(across,along,strips,parts)",
  geometry,
);

const PIECE_COST = formula(
  "PIECE_COST",
  "Liner that a piece takes from a roll, with its seams counted as liner",
  {
    across: length,
    along: length,
    roll: length,
    roll_length: length,
    lap: length,
    worth: length,
  },
  area,
  "STRIPS_COST(across,along,roll,lap,worth,STRIPS(across,roll,lap),STRIPS(along,roll_length,lap))",
  geometry,
);

const COST_EITHER_WAY = formula(
  "COST_EITHER_WAY",
  "Liner that a piece takes from a roll, with its seams, laid the way that takes less",
  { wide: length, long: length, roll: length, roll_length: length, lap: length, worth: length },
  area,
  "MIN(PIECE_COST(wide,long,roll,roll_length,lap,worth)," + " PIECE_COST(long, wide, roll, roll_length, lap, worth))",
  geometry,
);

const COST_ON_ROLL = formula(
  "COST_ON_ROLL",
  "The same, and more than any piece takes for a roll that cannot be used",
  { wide: length, long: length, roll: length, roll_length: length, lap: length, worth: length },
  area,
  "IF(AND(roll>lap,roll_length>lap)," + " COST_EITHER_WAY(wide, long, roll, roll_length, lap, worth), 1000000[ft²])",
  geometry,
);

const FIRST_LEAST = formula(
  "FIRST_LEAST",
  "Which of six areas is the least; of equal ones the first",
  { a: area, b: area, d: area, e: area, f: area, g: area },
  count,
  "IF(a<=MIN(b,d,e,f,g),1,IF(b<=MIN(d,e,f,g),2,IF(d<=MIN(e,f,g),3,IF(e<=MIN(f,g),4,IF(f<=g,5,6)))))",
  "definition",
);

const IN_STREAM_SHEET = formula(
  "IN_STREAM_SHEET",
  "1 for a piece of the plan with the stream in one sheet, else 0; row by row. `pools` is 1 where they lie in the sheet",
  { kind: text, pools: number },
  number,
  '(kind<>"piece")*(kind<>"both")*(1-(kind="pool")*pools)',
  "definition",
);

const CUTS_FROM = formula(
  "CUTS_FROM",
  "How many whole cuts of a length come from a length of liner",
  { liner: length, cut: length },
  count,
  "INT(ROUND(liner/MAX(0.001[ft],cut),6))",
  geometry,
);

const ROLL_LEFT = formula(
  "ROLL_LEFT",
  "What lies on the open roll after a piece: of the roll that was open, or of the last one opened for it",
  { left: length, run: length, opened: count, pieces: count, cut: length, cuts: count, roll: length },
  length,
  "IF(opened=0,left-run,roll-(pieces-MIN(pieces,CUTS_FROM(left,cut))-(opened-1)*cuts)*cut)",
  geometry,
);

const ROW_GIVEN = formula(
  "ROW_GIVEN",
  "Does a row of a column of sizes, the nearest one within its rows, hold one?",
  { sizes: columnOf(length), rows: number, row: number },
  yesno,
  "INDEX(sizes,MAX(1,MIN(rows,row)))>0",
  "definition",
);

const PIECE_GIVEN = formula(
  "PIECE_GIVEN",
  "Is there what a piece lines: the basin first, then runs, falls and pools, each up to its last place?",
  {
    place: number,
    runs: columnOf(length),
    run: number,
    falls: columnOf(length),
    fall: number,
    pools: columnOf(length),
    end: number,
  },
  yesno,
  "IF(place=1,TRUE,IF(place<=run,ROW_GIVEN(runs,run-1,place-1),IF(place<=fall,ROW_GIVEN(falls,fall-run,place-run),ROW_GIVEN(pools,end-fall,place-fall))))",
  "definition",
);

const LIFT_LIMIT = formula(
  "LIFT_LIMIT",
  "Weight that most healthy workers may lift in the posture given",
  {
    load_constant: weight,
    reach: "in",
    height: "in",
    travel: "in",
    twist: "°",
    frequency: number,
    coupling: number,
  },
  weight,
  "load_constant*10/MAX(10,reach)*(1-0.0075*ABS(height-30))" +
    "*MIN(1,0.82+1.8/MAX(10,travel))*(1-0.0032*twist)*frequency*coupling",
  "NIOSH Publication 94-110, revised lifting equation (twist from memory)",
);

export const linerFormulas = [
  STRIPS,
  SEAM_OF,
  STRIPS_COST,
  PIECE_COST,
  COST_EITHER_WAY,
  COST_ON_ROLL,
  FIRST_LEAST,
  IN_STREAM_SHEET,
  CUTS_FROM,
  ROLL_LEFT,
  ROW_GIVEN,
  PIECE_GIVEN,
  LIFT_LIMIT,
] as const;
