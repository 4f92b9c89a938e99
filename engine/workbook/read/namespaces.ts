/** XML vocabularies of ISO/IEC 29500: the transitional and the strict name of each. */
export const spreadsheet: ReadonlySet<string> = new Set([
  "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
  "http://purl.oclc.org/ooxml/spreadsheetml/main",
]);

export const relationships: ReadonlySet<string> = new Set([
  "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
  "http://purl.oclc.org/ooxml/officeDocument/relationships",
]);

export const packageRelationships: ReadonlySet<string> = new Set([
  "http://schemas.openxmlformats.org/package/2006/relationships",
]);

export const contentTypes: ReadonlySet<string> = new Set([
  "http://schemas.openxmlformats.org/package/2006/content-types",
]);

export const coreProperties: ReadonlySet<string> = new Set([
  "http://schemas.openxmlformats.org/package/2006/metadata/core-properties",
  "http://purl.org/dc/elements/1.1/",
  "http://purl.org/dc/terms/",
]);

export const customProperties: ReadonlySet<string> = new Set([
  "http://schemas.openxmlformats.org/officeDocument/2006/custom-properties",
  "http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes",
  "http://purl.oclc.org/ooxml/officeDocument/customProperties",
  "http://purl.oclc.org/ooxml/officeDocument/docPropsVTypes",
]);

/** Elements that offer alternatives for programs of other years. */
export const compatibility: ReadonlySet<string> = new Set([
  "http://schemas.openxmlformats.org/markup-compatibility/2006",
]);

/** Drawings: shapes, charts, themes. Alternatives for programs of other years are read through. */
export const drawing: ReadonlySet<string> = new Set([
  "http://schemas.openxmlformats.org/drawingml/2006/main",
  "http://purl.oclc.org/ooxml/drawingml/main",
  "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing",
  "http://purl.oclc.org/ooxml/drawingml/spreadsheetDrawing",
  "http://schemas.openxmlformats.org/drawingml/2006/chart",
  "http://purl.oclc.org/ooxml/drawingml/chart",
  "http://schemas.openxmlformats.org/markup-compatibility/2006",
]);
