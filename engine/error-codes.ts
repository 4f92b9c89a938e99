/** What an error of a code means, and what to do. Its own sentence names file, cell, value and rule. */
export interface ErrorMeaning {
  readonly means: string;
  readonly todo: string;
}

const said = (means: string, todo: string): ErrorMeaning => Object.freeze({ means, todo });

const office = {
  "book-invalid": said("Rows of the office book break their rules.", "Correct the cells named."),
  "book-kind": said("The office book is no .xlsx or .json file.", "Save it as .xlsx."),
  "book-lacks-table": said(
    "The template reads a table that the office book does not have.",
    "Add the table, or write a new book with `rillbook office --new`.",
  ),
  "book-moved": said(
    "The office book has another rate than the one that was learned against.",
    "Learn again against this book, with `rillbook learn`.",
  ),
  "book-shape": said("The JSON is no office book.", "Correct the place named."),
  "book-too-long": said(
    "A job needs more rows of the office book than the template's table holds.",
    "Name fewer items, or split the job.",
  ),
  "book-units": said(
    "The new office book is asked for in other units than the book that it is made from.",
    "Leave `--units` out, or give a book of those units.",
  ),
  "code-unknown": said(
    "A code that the job gives is not in the office book.",
    "Correct the code, or add it to the book.",
  ),
  "logo-kind": said(
    "The logo that the office book names is no PNG or JPEG picture.",
    "Save it as one of these, or name another file.",
  ),
  "logo-missing": said(
    "The office book names a logo that does not exist.",
    "Correct the name, which counts from the folder of the book, or clear it.",
  ),
  "logo-too-large": said("The picture of the logo is larger than 2 MB.", "Save it smaller."),
  "office-missing": said(
    "An office book is named that does not exist, or none where one is needed.",
    "Correct the path, or give a book with `--office`.",
  ),
  "office-other": said(
    "The workbook was made with another office book than the one given.",
    "Give the book that its first sheet names.",
  ),
} as const;

const job = {
  "assignment-unclear": said(
    "What to set is not of the form name=value.",
    "Write it so, in quotes where it has spaces.",
  ),
  "date-invalid": said("A date that there is not.", "Write it as 2027-01-15."),
  "job-incomplete": said("Inputs of the job are missing.", "Give them values."),
  "job-invalid": said("The job record breaks its schema.", "Correct the places named."),
  "json-broken": said("The file is no JSON.", "Correct it at the line and column named."),
  "measure-unclear": said("A number with its unit can be read in two ways.", "Write it out."),
  "name-no-input": said("The name is of a formula or a fixed figure.", "Set the inputs it reads."),
  "name-unknown": said(
    "No cell has that name.",
    "Use the nearest one that is told; `rillbook names` lists all.",
  ),
  "percent-unclear": said("A percentage without its sign.", "Write 7.65% for seven and a bit."),
  "record-is-workbook": said(
    "A workbook where a job record is wanted.",
    "Make the record with `rillbook take`.",
  ),
  "row-too-far": said("A row is set that does not follow the last one.", "Use the next row."),
  "unit-unknown": said("The unit is not in the table of units.", "Use one that is."),
  "unit-wrong": said("The unit measures something else than the cell.", "Use one that fits."),
  "units-unknown": said("The record names no system of units.", 'Write "us" or "si".'),
} as const;

const templates = {
  "compare-templates": said("The two jobs are of two templates.", "Compare jobs of one."),
  "compare-units": said(
    "The two jobs are in two systems of units.",
    "Bring one into the other's units.",
  ),
  "template-changed": said(
    "The template given calculates otherwise than the one that the workbook was written with.",
    "Give the file as it was then; a change of figures is a new version.",
  ),
  "template-file": said(
    "A file of templates cannot be loaded, exports none, or stands where none is taken.",
    "See its sentence.",
  ),
  "template-taken": said(
    "A file brings a template whose name and version are there already.",
    "Give it a name of its own.",
  ),
  "template-faulty": said(
    "The template does not compile: names, units, formulas, structure.",
    "Mend each fault in the list.",
  ),
  "template-other": said(
    "The workbook was made with another template than the one named.",
    "Name the one it was made with.",
  ),
  "template-unknown": said(
    "The template that a job or a workbook names is not here.",
    "Correct the name, or use a program that has the template.",
  ),
  "template-version": said(
    "The template is here, but not in that version.",
    "Use a program that has the version, or begin the job again with one that is here.",
  ),
  "template-without-roles": said(
    "The template does not say which cells are price and cost.",
    'Give it "roles".',
  ),
  "templates-differ": said(
    "Two jobs have other templates, versions or units, so formulas moved the price too.",
    "Bring both to one version.",
  ),
} as const;

const files = {
  "disk-full": said("There is no room to write; what was there is whole.", "Make room."),
  "file-exists": said("The file is there already and left as it is.", "Name another one."),
  "file-kind": said(
    "The file is of another kind than the command takes in that place.",
    "Give one of the kind named.",
  ),
  "file-too-large": said("The file is larger than any record or book.", "Name another one."),
  "file-unreadable": said("The file is missing or cannot be read.", "Check name and rights."),
  "folder-missing": said("The folder to write to does not exist.", "Make it, or name another."),
  "folder-unreadable": said("A folder of jobs cannot be read.", "Check its rights."),
  "job-changed": said(
    "Another program changed the file while this one worked; its version stays.",
    "Look at the file and try again.",
  ),
  "job-locked": said("Another run changes the file.", "Wait until it is done and try again."),
  "output-edited": said(
    "The workbook to be written over holds changes that stand nowhere else.",
    "Take them in with `rillbook take`, or write to another file.",
  ),
  "output-is-folder": said("The file to write is a folder.", "Name a file."),
  "output-is-input": said("The command would write over what it reads.", "Name another file."),
  "output-kind": said(
    "The file to write has another ending, or is there as another kind of file.",
    "Name it by its kind, or name another file.",
  ),
  "output-missing": said("The command needs the name of a file to write.", "Give it with `-o`."),
  "output-not-file": said("The file to write is a pipe or a device.", "Name a file."),
  "output-not-writable": said("The system does not let the file be written.", "See its reason."),
  "output-open": said("A spreadsheet program has the file open.", "Close it there."),
} as const;

const workbooks = {
  "cell-text-too-long": said(
    "A text is longer than a cell holds.",
    "Shorten the inputs it is made of.",
  ),
  "drawings-lost": said(
    "The workbook holds drawings that a new bid cannot carry.",
    "Put them there as PNG, JPEG or GIF, take them out, or name another file.",
  ),
  "other-job": said(
    "Workbook and record are of two jobs.",
    "Name the record of this job, or a new file.",
  ),
  "properties-lost": said(
    "A library dropped the workbook's custom properties as it saved.",
    "Take it into the record it was written from, or as the sentence says.",
  ),
  "properties-there": said(
    "The workbook says itself what it was made with.",
    "Leave the option out.",
  ),
  "record-changed": said(
    "The record was changed past its trail since the workbook was written.",
    "Write a fresh workbook and make the changes there.",
  ),
  "trail-broken": said(
    "The trail was edited or cut, so nobody can tell what was changed.",
    "Use a copy whose trail holds.",
  ),
  "trail-too-long": said(
    "The trail has more entries than a workbook carries.",
    "Make a shorter record with `rillbook shorten`, and bid from that one.",
  ),
  "trails-part": said(
    "Record and workbook were both changed since one was written from the other.",
    "Make the changes in a fresh workbook, or take it into another record.",
  ),
  "workbook-cell": said("A cell cannot be read with certainty.", "Correct the cell named."),
  "workbook-damaged": said(
    "The file breaks its format.",
    "Open it in a spreadsheet program and save it as .xlsx.",
  ),
  "workbook-dates": said(
    "The workbook counts its dates from 1904.",
    "Turn that off in the spreadsheet program, look at the dates, save again.",
  ),
  "workbook-encrypted": said("The workbook is encrypted.", "Save it without a password."),
  "workbook-file": said("The workbook is missing or no file.", "Check the name."),
  "workbook-foreign": said(
    "The workbook does not say that rillbook wrote it.",
    "Use one written by `rillbook bid`, saved as .xlsx with its properties.",
  ),
  "workbook-inputs": said("Inputs of the workbook break their rules.", "Correct the cells named."),
  "workbook-kind": said("The file is no .xlsx workbook.", "Save it as .xlsx."),
  "workbook-name": said("A defined name is missing or of another shape.", "Put it back."),
  "workbook-size": said("The workbook passes a limit of the reader.", "Take out what is too much."),
  "workbook-unsafe": said(
    "The workbook has a construct that no spreadsheet program writes.",
    "Ask where it comes from; save it anew in a spreadsheet program.",
  ),
} as const;

const runs = {
  "filter-invalid": said(
    "A filter is no name, operator and value.",
    'Write it like "price>=20000".',
  ),
  "filter-unknown": said("No template has the name in the filter.", "Use the nearest one told."),
  "learned-unusable": said(
    "Rates marked in a workbook of learned rates cannot be taken.",
    "Clear the mark, or mend what is told of it.",
  ),
  "nothing-built": said(
    "None of the files is a built job that says what it took.",
    "Fill in sheet Built of a job: its state, its last day, quantities and man-hours.",
  ),
  "nothing-found": said("The paths name no job.", "Check the paths."),
  "part-invalid": said("The part is not like 3/16.", "Write it so, counted from 1."),
  "parts-incomplete": said("The parts do not make up one run.", "Run or name what is missing."),
  "price-unknown": said("A price cannot be calculated.", "Correct the failed checks first."),
  "result-file": said(
    "The file holds no lines of a rerun.",
    "Name the .jsonl that rerun wrote, or start again without `--resume`.",
  ),
  "run-unfinished": said(
    "The file holds an unfinished run.",
    "Go on with `--resume`, or delete it.",
  ),
  "runs-differ": said("The results are of another run.", "Ask for the same, or start again."),
  "thread-lost": said("A file ended the thread that worked on it.", "Look at the file by itself."),
} as const;

const commands = {
  "by-missing": said("Nobody is named as the one who says so.", "Give `--by`."),
  "key-unusable": said("The key cannot be used.", "Make a pair with `rillbook seal --new-key`."),
  "not-a-bid": said("The workbook is no bid known here.", "Give one that `rillbook bid` wrote."),
  "options-missing": said("Options are missing or do not go together.", "See `--help`."),
  "page-missing": said(
    "The sheet of a page is not in the workbook.",
    "Undo its renaming, or write the bid again.",
  ),
  "page-unknown": said("No page has that name.", "Choose one of those told."),
  "printer-missing": said("LibreOffice is not found.", "Install it, or print by hand."),
  "printing-failed": said("LibreOffice printed nothing.", "Open the workbook there and look."),
  "seal-not-clean": said("The audit of the workbook is not clean.", "Mend what it finds first."),
  "seal-not-taken": said("The workbook takes no seal.", "Write the bid again and seal that."),
  "seal-there": said("The workbook is sealed already.", "Write the bid again for another key."),
  usage: said("The command was asked for in another way than it takes.", "See `--help`."),
} as const;

const faults = {
  "evaluators-differ": said(
    "The two evaluators give two values for a cell: a fault of the program. Nothing is written.",
    "Report it with the job record.",
  ),
  "program-fault": said(
    "Something that should not happen: a fault of the program.",
    "Report it with what was asked, and the lines that follow.",
  ),
} as const;

/** Every code by what it is about. */
export const errorCodesByRoom = {
  "Job records and inputs": job,
  "Office books": office,
  Templates: templates,
  Files: files,
  "Workbooks that are read": workbooks,
  "Many jobs": runs,
  Commands: commands,
  "Faults of the program": faults,
} as const;

/** Every code of an error, with what it means and what to do. */
export const errorCodes = Object.freeze({
  ...job,
  ...office,
  ...templates,
  ...files,
  ...workbooks,
  ...runs,
  ...commands,
  ...faults,
});

/** The code of an error: stable, for programs. */
export type ErrorName = keyof typeof errorCodes;
