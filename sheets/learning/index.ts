import { learning } from "./learning.js";

/** How many rows of jobs and tasks a workbook of learned rates has room for. */
export const learningSizes = [250, 1000, 3000] as const;

/** The templates of workbooks of learned rates, by size. */
export const learningTemplates = learningSizes.map(learning);
