import { learning } from "./learning.js";

/** How many rows of jobs and tasks a workbook of learned rates has room for: what the reader of workbooks reads again. */
export const learningSizes = [250, 760] as const;

/** The templates of workbooks of learned rates, by size. */
export const learningTemplates = learningSizes.map(learning);
