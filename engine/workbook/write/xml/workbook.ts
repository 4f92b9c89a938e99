import type { Book, DefinedName } from "../book/book.js";
import type { Sheet } from "../book/sheet.js";
import { program } from "../document.js";
import { attribute, content, head } from "./text.js";

const spaces =
  'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" ' +
  'xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" mc:Ignorable="x15" xmlns:x15="http://schemas.microsoft.com/office/spreadsheetml/2010/11/main"';

/** The list of sheets and of names (ISO/IEC 29500-1, 18.2.27); programs are to calculate as they open it. */
export function workbookXml({ sheets, names }: Book, linkOf: (sheet: number) => string): string {
  const listed = sheets.map(
    ({ name, options }, i) =>
      `<sheet sheetId="${i + 1}" name="${attribute(name)}" state="${options.hidden ? "hidden" : "visible"}" r:id="${linkOf(i)}"/>`,
  );
  const own = sheets.flatMap(printNames).join("");
  return (
    `${head}<workbook ${spaces}><fileVersion appName="${program}"/><workbookPr filterPrivacy="1"/>` +
    `<sheets>${listed.join("")}</sheets><definedNames>${names.map(nameXml).join("")}${own}</definedNames>` +
    `<calcPr calcId="171027" fullCalcOnLoad="1"/></workbook>`
  );
}

function nameXml({ name, sheet, area }: DefinedName): string {
  const quoted = /^[a-zA-Z0-9]*$/.test(sheet) ? sheet : `'${sheet}'`;
  return `<definedName name="${attribute(name)}">${content(`${quoted}!${area}`)}</definedName>`;
}

/** What of a sheet is printed, and which lines stand again on each page. */
function printNames({ name, pageSetup }: Sheet, at: number): string[] {
  const { printArea, printTitlesRow } = pageSetup;
  const said = (what: string, area: string | undefined) => {
    if (area === undefined) return [];
    const [from, to] = area.split(":");
    const cells = content(`'${name}'!$${from}:$${to}`);
    return [`<definedName name="_xlnm.${what}" localSheetId="${at}">${cells}</definedName>`];
  };
  return [...said("Print_Area", printArea), ...said("Print_Titles", printTitlesRow)];
}
