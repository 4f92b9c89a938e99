import { calc, count, hours, number, published, type TableBlock, table, text } from "../../../engine/template/index.js";
import { stages } from "../../plan/stages.js";
import type { Task } from "../task.js";

/** Rows that are planned stay in sight, whether or not anything is told of them yet. */
const shown = "hours_planned>0[h]";
const ofTold = (formula: string, none = "0[h]"): string => `IF(OR(told="hours",told="both"),${formula},${none})`;
const split = (effect: string): string => `IF(AND(told="both",planned>0),${effect},0[h])`;
/** What would be read as 0.0 is shown as no difference. Sums are made of it in full. */
const read = (column: string) => (row: number) => `HOURS_READ(INDEX(effect_sizes.${column},${row}))`;

/** What is not told, and what makes no difference. */
const dash = { zero: "–" } as const;

/** Hours of each task told, against the plan: what the difference comes from. */
export const taskEffects = (tasks: readonly Task[]): TableBlock =>
  table(
    "task_effects",
    "Hours by task",
    {
      rows: tasks.length,
      beside: "built_tasks",
      shown,
      data: tasks.map(({ task }) => ({ task })),
      note: "By quantity: more or less was done, at the planned hours for a unit. By rate: a unit took longer or shorter. Quantities stand on sheet Built. Without one, a difference is not split. A dash: not told, or no difference.",
    },
    {
      task: published(text, "Task", { source: "the list of tasks of this template" }),
      of_plan: calc(hours, ofTold("hours_planned"), "Hours planned", dash),
      taken: calc(hours, ofTold("hours_taken"), "Hours taken", dash),
      rate_planned: calc(
        number,
        ofTold("IF(hours_planned>0[h],planned/(hours_planned/1[h]),0)", "0"),
        "Units an hour planned",
        { decimals: 2, ...dash },
      ),
      rate_taken: calc(
        number,
        'IF(AND(told="both",hours_taken>0[h]),quantity_done/(hours_taken/1[h]),0)',
        "Units an hour made",
        { decimals: 2, ...dash },
      ),
      more: calc(hours, read("more"), "Difference", { strong: true, ...dash }),
      by_quantity: calc(hours, read("by_quantity"), "By quantity", { strong: true, ...dash }),
      by_rate: calc(hours, read("by_rate"), "By rate", { strong: true, ...dash }),
    },
  );

/** Each difference in full, and how large it is, for the order of them. */
export const effectSizes = (tasks: readonly Task[]): TableBlock =>
  table(
    "effect_sizes",
    "Differences in full",
    {
      rows: tasks.length,
      beside: "built_tasks",
      shown,
      note: "Size with a millionth by row, so that equal ones have an order.",
    },
    {
      more: calc(hours, ofTold("hours_taken-hours_planned"), "Difference"),
      by_quantity: calc(hours, split("QUANTITY_EFFECT(planned,hours_planned,quantity_done)"), "By quantity"),
      by_rate: calc(hours, split("RATE_EFFECT(planned,hours_planned,quantity_done,hours_taken)"), "By rate"),
      size: calc(number, (row) => ofTold(`ABS(more)/1[h]+${row}*0.000001`, "0"), "Size"),
    },
  );

/**
 * The same by stage of the work, for the eye: only tasks whose hours were told count on either side. Where none was told,
 * as of a lost job, the plan stands alone.
 */
export const stageHours = table(
  "stage_hours",
  "Hours by stage",
  { rows: stages.length, data: stages.map((stage) => ({ stage })) },
  {
    stage: published(text, "Stage", { source: "the stages of this template" }),
    planned: calc(
      hours,
      "IF(built_hours_told>0,SUM_WHERE(task_effects.of_plan,tasks.stage,stage),SUM_WHERE(built_tasks.hours_planned,tasks.stage,stage))",
      "Planned",
    ),
    taken: calc(hours, "SUM_WHERE(task_effects.taken,tasks.stage,stage)", "Taken"),
  },
);

const at = (column: string): string => `INDEX(task_effects.${column},at)`;

/** The tasks that are furthest from the plan, in words. */
export const largestEffects = table(
  "largest_effects",
  "Largest differences",
  { rows: 3 },
  {
    rank: calc(count, (row) => `${row}`, "Rank"),
    place: calc(
      count,
      (row) =>
        `IF(LARGE(effect_sizes.size,${row})>=0.05,PLACE_OR_ZERO(effect_sizes.size,LARGE(effect_sizes.size,${row})),0)`,
      "Row",
    ),
    at: calc(count, "MAX(1,place)", "Row read"),
    parts: calc(
      text,
      `IF(INDEX(built_tasks.told,at)="both",HOURS_PARTS_SAID(${at("by_quantity")},${at("by_rate")}),"its quantity is not told")`,
      "Parts",
    ),
    note_said: calc(text, 'JOINED(" ",INDEX(built_tasks.note,at))', "Note"),
    in_words: calc(
      text,
      `IF(place>0,${at("task")}&": "&HOURS_MORE_SAID(${at("more")}/1[h])&" ("&parts&")."&note_said,"")`,
      "In words",
    ),
  },
);
