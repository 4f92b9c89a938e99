/**
 * Of a template whose workbooks learn rates from built jobs: where the evidence goes, and where what was learned
 * stands, by the names of its cells, its tables and their columns.
 */
export interface Learns {
  /** Date input: jobs are as old as they are on this day. */
  readonly on: string;
  /** Percent input: the chance that the interval of a rate is meant to hold. */
  readonly interval: string;
  /** One row a job and task: inputs; `counted` is calculated, 1 where the row counts. */
  readonly evidence: {
    readonly table: string;
    readonly task: string;
    readonly job: string;
    readonly ended: string;
    readonly code: string;
    /** One of its choices, where the job's own condition of that kind is among them. */
    readonly condition: string;
    readonly quantity: string;
    readonly unit: string;
    readonly hours: string;
    readonly factor: string;
    readonly planned: string;
    readonly plannedQuantity: string;
    /** Why a person leaves the row out; blank where it counts. */
    readonly reason: string;
    readonly counted: string;
  };
  /** One row a rate of the office book: inputs. */
  readonly rates: {
    readonly table: string;
    readonly code: string;
    readonly means: string;
    readonly unit: string;
    readonly inBook: string;
  };
  /** Beside it, what was learned: whether it is to be taken is an input, the rest is calculated. */
  readonly learned: {
    readonly table: string;
    readonly takeIt: string;
    readonly forBook: string;
    readonly low: string;
    readonly high: string;
    readonly jobs: string;
  };
  /**
   * How far jobs went over what would have been bid for them: whether it is to be taken is an input, the rest is calculated.
   * `counts` is a column beside the list of jobs, 1 where the job is among them. It goes where the role `overrun` says.
   */
  readonly overrun: {
    readonly takeIt: string;
    readonly half: string;
    readonly fifth: string;
    readonly jobs: string;
    readonly counts: string;
  };
  /** One row a rate and condition: inputs. */
  readonly ways: { readonly table: string; readonly code: string; readonly condition: string };
  /** One row a job: inputs. */
  readonly jobs: { readonly table: string; readonly job: string; readonly ended: string };
  /** One row a bid won or lost, whatever became of it later: inputs. */
  readonly decided: {
    readonly table: string;
    readonly job: string;
    readonly won: string;
    readonly price: string;
    readonly cost: string;
  };
  /** The cell of jobs that holds the condition: one of those that their role `built` names. */
  readonly condition: string;
  /** The table of rates in the office book, and its columns. */
  readonly book: {
    readonly table: string;
    readonly code: string;
    readonly means: string;
    readonly value: string;
    readonly unit: string;
    readonly source: string;
  };
}
