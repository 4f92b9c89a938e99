import { calc, count, length, lines, number, smallLength, table, text, yesno } from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";
import { numberedRows, rowNumber } from "../numbered.js";

/** Points of the pipe: pump, rim; each level's run end and foot from the last one up; the highest outlet. */
export const pipeRows = 2 * capacity.falls + 4;

/** Width of the profile's drawn area over its height. */
export const profileRatio = 4.5;

/** Lips of one level, counted from its first. */
export const lipsNumbered = table(
  "lips_numbered",
  "Lips, numbered in their level",
  { rows: capacity.falls, beside: "falls", filled: "width_counted>0" },
  {
    nth: calc(count, "IF(above.at=level,above.nth+1,1)", "Lip of its level", { first: "1" }),
    at: calc(count, "level", "Level"),
    key: calc(number, "level+nth/100", "Level and lip", { decimals: 2 }),
  },
);

/** Formula: the name of a level's lip, by its number there. */
const lipName = (nth: number) => `PICK_OR(falls.name,lips_numbered.key,number+${nth / 100},"")`;

/**
 * The water course seen from the side, level by level: along from its head, up from the rim of the
 * basin, as the crew measures. A level that is not in use adds nothing: it repeats where the one before it ends.
 */
export const course = table(
  "course",
  "Water course, level by level",
  {
    ...numberedRows(capacity.falls, "level"),
    beside: "levels",
    note: "For the drawing: runs and pools of a level one behind another, depths as calculated, banks as counted.",
  },
  {
    level: rowNumber("Level"),
    pool_length: calc(length, "SUM_WHERE(pools.length_counted,pools.before_level,number)", "Pool length"),
    run_length: calc(length, "SUM_WHERE(runs.length_counted,runs.after_level,number)", "Run length"),
    pool_along: calc(length, "above.finish_along", "Pool start", { first: "0[ft]" }),
    lip_along: calc(length, "pool_along+pool_length", "Lip", { first: "course_lead+pool_length" }),
    finish_along: calc(length, "lip_along+run_length", "Run end"),
    top: calc(length, "above.finish", "Water over lip", { first: "total_drop-rim_above_water" }),
    foot: calc(length, "top-drop", "Water at foot"),
    finish: calc(length, "foot-run_fall", "Water at run end"),
    run_depth: calc(
      smallLength,
      "IF(run_length>0,LARGEST_WHERE(runs.depth_likely,runs.after_level,number),above.run_depth)",
      "Run depth",
      { first: "LARGEST_WHERE(runs.depth_likely,runs.after_level,number)" },
    ),
    lip_depth: calc(
      smallLength,
      "IF(in_use,LARGEST_WHERE(falls.lip_depth,falls.level,number),run_depth)",
      "Depth over lip",
    ),
    pool_depth: calc(
      length,
      "MAX(lip_depth,LARGEST_WHERE(pools.water_depth,pools.before_level,number))",
      "Pool depth, running",
    ),
    bank: calc(
      length,
      "IF(run_length>0,LARGEST_WHERE(runs.bank_counted,runs.after_level,number)-run_depth,above.bank)",
      "Bank over water",
      { first: "IF(run_length>0,LARGEST_WHERE(runs.bank_counted,runs.after_level,number)-run_depth,freeboard)" },
    ),
    lips: calc(count, "SUMPRODUCT((falls.level=number)*(falls.width_counted>0))", "Lips"),
    others_said: calc(text, `IF(lips>1,JOINED(" and ",${lipName(2)})&IF(lips>2," and more",""),"")`, "Its other lips"),
    level_said: calc(text, `IF(in_use,${lipName(1)}&others_said,"")`, "Level, named by its lips"),
    // falls too near for a name each share one
    near: calc(
      yesno,
      "AND(lip_along-above.named_along<0.3*course_width,above.named_up-top-bank<0.77*said_height)",
      "Near the one named",
      { first: "FALSE" },
    ),
    is_named: calc(yesno, "AND(in_use,OR(above.named_with=0,NOT(near)))", "Has a name", { first: "in_use" }),
    named_with: calc(count, "IF(is_named,number,above.named_with)", "Named with level", {
      first: "IF(is_named,number,0)",
    }),
    named_along: calc(length, "IF(is_named,lip_along,above.named_along)", "Last name, along", { first: "lip_along" }),
    named_up: calc(length, "IF(is_named,top+bank,above.named_up)", "Last name, up", { first: "top+bank" }),
    shares_name: calc(count, "IF(in_use,named_with,0)", "Shares the name of level"),
    together: calc(count, "COUNT_WHERE(course.shares_name,number)", "Levels named together"),
    last_said: calc(
      text,
      'IF(together>1,INDEX(course.level_said,LARGEST_WHERE(levels.number,course.shares_name,number)),"")',
      "Last of these",
    ),
    drop_together: calc(length, "SUM_WHERE(levels.drop,course.shares_name,number)", "Drop of these"),
    drop_said: calc(text, "~{drop_together}", "Drop in words", { reader: "crew" }),
    name_said: calc(
      text,
      'IF(together>1,level_said&" to "&last_said&", "&FIXED(together,0)&" falls",level_said)',
      "Name in words",
    ),
    said: calc(text, 'IF(is_named,name_said&": "&drop_said," ")', "Name and drop"),
    said_along: calc(length, "IF(in_use,lip_along+0.004*course_width,course_width)", "Name, along"),
    // above the banks, by half the height of its letters
    said_up: calc(length, "IF(in_use,top+bank+said_height/2,course_up)", "Name, up"),
    pool_said: calc(text, 'IF(pool_length>0,PICK_OR(pools.name,pools.before_level,number,"")," ")', "Pool"),
    pool_said_along: calc(length, "IF(pool_length>0,pool_along+pool_length/2,course_width)", "Pool, along"),
    pool_said_up: calc(length, "IF(pool_length>0,top-pool_depth,course_up)", "Pool, up"),
  },
);

/** The ends of the drawing, and what stands beside its basin. */
export const courseEnds = lines("Water course, ends", {
  course_lead: calc(length, "0.04*(stream_length+basin_length)", "Lead before first lip"),
  course_finish: calc(length, `INDEX(course.finish_along,${capacity.falls})`, "Stream end"),
  manifold_tape: calc(length, "MAX(0[ft],MIN(stream_length,main_length-vault_middle))", "Manifold from basin's edge", {
    note: "Where the main goes straight along the stream.",
  }),
  manifold_at: calc(text, "~{manifold_tape|0}", "Manifold, in words", { reader: "crew" }),
  manifold_place: calc(
    text,
    'IF(manifold_tape>0,", along the stream about "&manifold_at&" up the tape","")',
    "Manifold place, in words",
    { reader: "crew" },
  ),
  basin_middle: calc(length, "course_finish+basin_length/2", "Basin, middle"),
  pump_along: calc(length, "course_finish+vault_middle", "Pump"),
  basin_finish: calc(length, "course_finish+basin_length", "Basin, far end"),
  basin_bottom: calc(length, "-basin_depth", "Basin bottom"),
  basin_said: calc(text, "~Basin {basin_length} × {basin_width} × {basin_depth}", "Basin in words", {
    reader: "crew",
  }),
  course_width: calc(
    length,
    `MAX(1.02*basin_finish,${profileRatio}*(1.1*total_drop+MAX(course.bank)+1.3*basin_depth))`,
    "Drawing width",
  ),
  pipe_rises_along: calc(length, `INDEX(course_pipe.along,${pipeRows})`, "Pipe rises at"),
  pipe_rises_to: calc(length, `INDEX(course_pipe.up,${pipeRows})`, "Pipe rises to"),
  said_height: calc(length, `0.16*course_width/${profileRatio}`, "Height of a name"),
  course_up: calc(length, `course_width/${profileRatio}-1.3*basin_depth`, "Drawing top"),
  course_bottom: calc(length, "-1.3*basin_depth", "Drawing bottom"),
});
