import { dirname, relative, resolve } from "node:path";

/** The path of an office book as a job names it: from the folder of the job's own file. */
export const pathFrom = (file: string, office: string): string =>
  relative(dirname(resolve(file)), resolve(office)).replaceAll("\\", "/");
