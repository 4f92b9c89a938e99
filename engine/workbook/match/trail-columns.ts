/** The sheet that says where each value comes from. */
export const trailSheet = "Trail";

/** The columns of the sheet: of the lists of values as written, and of the changes. */
export const trailColumns = {
  values: ["", "Input", "Value", "Unit", "Origin", "By", "When", "Note", "Meaning"],
  entries: ["No.", "Input", "New", "Unit", "From", "By", "Time (UTC)", "Note", "Old", "Hash"],
} as const;
