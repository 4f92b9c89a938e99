/**
 * What a job really took, by the names of its cells and columns. To read it, ask `model.byId` for a cell by its name,
 * `columnOf(model, table, column)` for a column, and the job's values at their `index`. A blank input holds null: it was
 * not given, and nothing is to be guessed in its place. A zero was given.
 */
export interface Built {
  /** Text: which of `states` the job is in. */
  readonly state: string;
  readonly states: {
    readonly bid: string;
    readonly won: string;
    readonly lost: string;
    readonly built: string;
  };
  /** Dates: of the decision, of the first and the last day of work. */
  readonly decided: string;
  readonly began: string;
  readonly ended: string;
  /** Text: why it was lost. */
  readonly reason: string;
  /** Days of work and days lost to rain, as they came; and as planned. */
  readonly days: string;
  readonly daysPlanned: string;
  readonly rainDays: string;
  readonly rainDaysPlanned: string;
  /** Money: what the customer was charged in the end. */
  readonly charged: string;
  /** Money: the cost of the work as planned, and as it came; what is not told counts as planned. */
  readonly costPlanned: string;
  readonly costMade: string;
  /** A yes or no: is all of that told; and in words what counts as planned. */
  readonly toldWhole: string;
  readonly leftOut: string;
  readonly tasks: BuiltTasks;
  /** Work that the bid did not plan: columns of one table. */
  readonly others: { readonly task: string; readonly hours: string; readonly why: string };
  /** Cells that tell how hard the site was and how it was worked: what jobs are told apart by. */
  readonly conditions: readonly string[];
}

/**
 * The tasks, row by row: columns of tables of as many rows, so that one row number reads them all. Work goes at
 * `rate` units an hour of one person, slowed by `factor`: a job's own rate is quantity / hours × factor.
 */
export interface BuiltTasks {
  readonly task: string;
  readonly unit: string;
  /** Text: the code of its rate in the office book, with a machine and by hand; `byHand` says which one counts. */
  readonly rateCode: string;
  readonly handRateCode: string;
  /** A yes or no of the job. */
  readonly byHand: string;
  readonly rate: string;
  readonly factor: string;
  readonly plannedQuantity: string;
  readonly plannedHours: string;
  readonly plannedMachine: string;
  /** Inputs: units really done, man-hours, machine hours, a note. */
  readonly quantity: string;
  readonly hours: string;
  readonly machine: string;
  readonly note: string;
}
