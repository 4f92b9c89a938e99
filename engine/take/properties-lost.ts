import { RillbookError } from "../errors.js";
import type { Template } from "../template/template.js";

/**
 * Why nothing is taken in of a workbook whose custom properties are gone, and the two ways on: into the
 * record it was written from, or, where there is none, into a new one.
 */
export function propertiesLost(file: string, { name, own }: Template): RillbookError {
  const template = own === undefined ? name : `${own.file} --template ${name}`;
  const record = `${file.replace(/\.xls[xm]$/i, "")}.json`;
  return new RillbookError(
    "properties-lost",
    `${file} has lost its custom properties (exceljs, openpyxl and other libraries drop them by saving), so nothing shows whether its trail and inputs are as they were written. Take it into the job record it was written from: rillbook take ${file} -o <job record>. If there is none, make a new one from its inputs, with a new trail: rillbook take ${file} --template ${template} -o ${record} (--office <file>, if it has an office book). Then: rillbook bid <job record> -o <new workbook>.`,
  );
}
