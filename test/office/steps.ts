/** One thing an office does to an open workbook. Rows count from 1, as on the screen. */
export type Step =
  | { readonly kind: "set"; readonly name: string; readonly value: number | string }
  /** Typed as a person would under the program's locale: `2,5`, `22,5%`, `14.03.2027`. */
  | { readonly kind: "type"; readonly name: string; readonly keys: string }
  /** A picture from a file, its upper left corner in a cell; its size in 1/100 mm. */
  | {
      readonly kind: "picture";
      readonly sheet: string;
      readonly file: string;
      readonly cell: string;
      readonly size: number;
    }
  | { readonly kind: "insert-row"; readonly sheet: string; readonly row: number }
  /** What else a person may do by hand: Basic that has `document`, `CellOf` and `PageOf` at hand. */
  | { readonly kind: "basic"; readonly statements: string }
  /** Stored as it stands on the screen, nothing calculated anew, and open for what follows. */
  | { readonly kind: "save"; readonly file: string };

/** `falls.drop[3]` is the third cell behind the name; a bare name must stand for one cell. */
function splitName(name: string): { range: string; place: number } {
  const match = /^(.*)\[(\d+)\]$/.exec(name);
  if (!match) return { range: name, place: 0 };
  const place = Number(match[2]);
  if (place < 1) throw new Error(`${name}: places count from 1: write ${match[1]}[1]`);
  return { range: match[1] as string, place };
}

/** A Basic string literal; line ends cannot stand in one, so they are joined in as codes. */
function basicText(text: string): string {
  const parts = text.split(/(\r|\n)/).filter((part) => part !== "");
  if (parts.length === 0) return '""';
  return parts
    .map((part) =>
      part === "\n" ? "Chr(10)" : part === "\r" ? "Chr(13)" : `"${part.replaceAll('"', '""')}"`,
    )
    .join(" & ");
}

function basicNumber(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`${value} cannot be put in a cell: give a number`);
  return String(value);
}

function statement(step: Step): string {
  if (step.kind === "basic") return step.statements;
  if (step.kind === "insert-row") {
    return `InsertRow(document, ${basicText(step.sheet)}, ${basicNumber(step.row - 1)})`;
  }
  if (step.kind === "picture") {
    const where = `${basicText(step.sheet)}, ${basicText(step.cell)}`;
    return `PutPicture(document, ${where}, ${basicText(step.file)}, ${basicNumber(step.size)})`;
  }
  if (step.kind === "save") return `SaveAs(document, ${basicText(step.file)})`;
  const { range, place } = splitName(step.name);
  const cell = `CellOf(document, ${basicText(range)}, ${place})`;
  if (step.kind === "type") {
    return `TypeKeys(${cell}, ${basicText(step.keys)}, ${basicText(step.name)})`;
  }
  return typeof step.value === "number"
    ? `SetNumber(${cell}, ${basicNumber(step.value)}, ${basicText(step.name)})`
    : `SetText(${cell}, ${basicText(step.value)}, ${basicText(step.name)})`;
}

// Each helper reads back what it did: LibreOffice refuses some edits without a word.
const HELPERS = `
Dim trouble As String

Sub Refuse(text As String)
  trouble = text
  Error 1001
End Sub

Function Prop(key As String, setting)
  Dim made As New com.sun.star.beans.PropertyValue
  made.Name = key
  made.Value = setting
  Prop = made
End Function

Function CellOf(document, key As String, place As Long)
  If Not document.NamedRanges.hasByName(key) Then Refuse("no defined name " & key)
  area = document.NamedRanges.getByName(key).getReferredCells()
  If IsNull(area) Then Refuse("the name " & key & " stands for no cells")
  tall = area.Rows.Count
  wide = area.Columns.Count
  If tall > 1 And wide > 1 Then Refuse("the name " & key & " is neither one column nor one row")
  If place = 0 And tall * wide > 1 Then Refuse("the name " & key & " is a range: say which, as in " & key & "[1]")
  If place > tall * wide Then Refuse("the name " & key & " has " & (tall * wide) & " cells, not " & place)
  If place = 0 Then place = 1
  If tall > 1 Then
    CellOf = area.getCellByPosition(0, place - 1)
  Else
    CellOf = area.getCellByPosition(place - 1, 0)
  End If
End Function

Sub SetNumber(cell, wanted As Double, key As String)
  cell.setValue(wanted)
  If cell.getValue() <> wanted Then Refuse("the cell " & key & " did not take the number " & wanted)
End Sub

Sub SetText(cell, wanted As String, key As String)
  cell.setString(wanted)
  If cell.getString() <> wanted Then Refuse("the cell " & key & " did not take the text " & wanted)
End Sub

Sub TypeKeys(cell, keys As String, key As String)
  cell.FormulaLocal = keys
  If cell.FormulaLocal = "" Then Refuse("the cell " & key & " did not take the keys " & keys)
End Sub

Sub PutPicture(document, key As String, address As String, path As String, side As Long)
  page = document.Sheets.getByName(key)
  home = page.getCellRangeByName(address)
  provider = createUnoService("com.sun.star.graphic.GraphicProvider")
  picture = provider.queryGraphic(Array(Prop("URL", ConvertToURL(path))))
  If IsNull(picture) Then Refuse("no picture in " & path)
  shape = document.createInstance("com.sun.star.drawing.GraphicObjectShape")
  shape.Graphic = picture
  page.DrawPage.add(shape)
  Dim measure As New com.sun.star.awt.Size
  measure.Width = side
  measure.Height = side
  shape.setSize(measure)
  shape.setPosition(home.Position)
  shape.Anchor = home
End Sub

Sub SaveAs(document, path As String)
  document.storeToURL(ConvertToURL(path), Array(Prop("FilterName", "Calc MS Excel 2007 XML")))
End Sub

' A protected sheet takes few changes; it is left open, as a person who unlocked it would.
Function PageOf(document, key As String)
  If Not document.Sheets.hasByName(key) Then Refuse("no sheet " & key)
  page = document.Sheets.getByName(key)
  If page.isProtected() Then page.unprotect("")
  PageOf = page
End Function

Sub InsertRow(document, key As String, row As Long)
  page = PageOf(document, key)
  page.Rows.insertByIndex(row, 1)
End Sub
`;

/** The Basic module that opens a workbook, takes the steps, recalculates hard, stores, and reports. */
export function macroOf(
  steps: readonly Step[],
  paths: { readonly from: string; readonly to: string; readonly report: string },
): string {
  return `${HELPERS}
Sub Report(text As String)
  channel = FreeFile
  Open ${basicText(paths.report)} For Output As #channel
  Print #channel, text
  Close #channel
End Sub

Sub Run
  On Error Goto Failed
  document = StarDesktop.loadComponentFromURL(ConvertToURL(${basicText(paths.from)}), "_blank", 0, Array(Prop("Hidden", True)))
  If IsNull(document) Then Refuse("the workbook could not be opened")
${steps.map((step) => `  ${statement(step)}`).join("\n")}
  document.calculateAll()
  SaveAs(document, ${basicText(paths.to)})
  document.close(True)
  Report("done")
  StarDesktop.terminate()
  Exit Sub
Failed:
  Report(IIf(trouble = "", Error$, trouble))
  StarDesktop.terminate()
End Sub
`;
}

const escapeXml = (text: string) =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

/** The profile files that make a Basic module callable as `macro:///Standard.Steps.Run`. */
export function macroFiles(source: string): Record<string, string> {
  const head = `<?xml version="1.0" encoding="UTF-8"?>\n`;
  const library = 'xmlns:library="http://openoffice.org/2000/library"';
  const script = 'xmlns:script="http://openoffice.org/2000/script"';
  const standard = 'library:name="Standard" library:readonly="false"';
  return {
    "user/basic/script.xlc": `${head}<!DOCTYPE library:libraries PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "libraries.dtd">
<library:libraries ${library} xmlns:xlink="http://www.w3.org/1999/xlink"><library:library library:name="Standard" library:link="false"/></library:libraries>`,
    "user/basic/Standard/script.xlb": `${head}<!DOCTYPE library:library PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "library.dtd">
<library:library ${library} ${standard} library:passwordprotected="false"><library:element library:name="Steps"/></library:library>`,
    "user/basic/Standard/Steps.xba": `${head}<!DOCTYPE script:module PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "module.dtd">
<script:module ${script} script:name="Steps" script:language="StarBasic">${escapeXml(source)}</script:module>`,
  };
}
