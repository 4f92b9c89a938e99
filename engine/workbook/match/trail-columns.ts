/** The sheet that says where each value comes from. */
export const trailSheet = "Trail";

/** The hidden sheet with every value that is not told on the other one, as this workbook was written. */
export const writtenSheet = "As written";

/** The columns of the sheet: of the lists of values as written, and of the changes. */
export const trailColumns = {
  values: ["", "Input", "Value", "Unit", "Origin", "By", "When", "Note", "Meaning"],
  written: ["", "Value of", "As written"],
  entries: ["No.", "Input", "New", "Unit", "From", "By", "Time (UTC)", "Note", "Old", "Hash"],
} as const;
