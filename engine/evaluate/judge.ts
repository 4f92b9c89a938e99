import type { Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";
import { judgedValues, plain } from "./judge-sheets.js";
import { judgedList, judgeTask, ownValue } from "./judge-task.js";

/**
 * Evaluates a job with hyperformula, the judge: on the same sheets and addresses as
 * the workbook has. Takes and returns a value for each cell of the model, by index;
 * formula cells of the list given are not looked at.
 */
export const judge = (model: Model, given: readonly Value[]): Value[] =>
  judgedList(model, given, judgedValues(judgeTask(model, given)));

/** What hyperformula tells of a cell, as our value. */
export const asValue = (value: unknown, cell: Cell): Value => ownValue(plain(value), cell);
