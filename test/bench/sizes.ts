/** How much is measured. */
export interface Size {
  /** Medians are taken over so many rounds, in each of which all programs meet the same load. */
  readonly rounds: number;
  /** Runs from job records, of so many jobs; `once` are measured in the first round only. */
  readonly jobs: readonly number[];
  readonly once: readonly number[];
  /** Workbooks in a run from workbooks, and how many of them each process of LibreOffice gets. */
  readonly workbooks: number;
  readonly officeFiles: number;
  readonly draws: number;
  /** Numbers of processes (worker threads of ours) to compare at; 0: one for each processor. */
  readonly processes: readonly number[];
  /** Rounds of the single commands. */
  readonly commandRounds: number;
}

export const sizes: Readonly<Record<"tiny" | "usual" | "full", Size>> = {
  tiny: {
    ...{ rounds: 1, jobs: [2], once: [], workbooks: 2, officeFiles: 2 },
    ...{ draws: 50, processes: [1], commandRounds: 1 },
  },
  usual: {
    ...{ rounds: 5, jobs: [100, 1000], once: [], workbooks: 48, officeFiles: 3 },
    ...{ draws: 10_000, processes: [0], commandRounds: 5 },
  },
  full: {
    ...{ rounds: 5, jobs: [10, 100, 1000], once: [10_000], workbooks: 48, officeFiles: 8 },
    ...{ draws: 10_000, processes: [1, 0], commandRounds: 5 },
  },
};
