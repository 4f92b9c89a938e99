import type { WorkbookContent } from "../../workbook/read/content.js";
import { booleanOf } from "../../workbook/read/text.js";
import type { Finding, Grade } from "../finding.js";
import { short } from "../subject.js";
import { type LookPair, lookFinding } from "./compared.js";

/** How the workbook is calculated, and what programs run or fetch as they open it. */
export function checkProgram(content: WorkbookContent, pairs: readonly LookPair[]): Finding[] {
  return [...calculation(content), ...asElsewhere(pairs), ...carried(content, pairs)];
}

function calculation({ look, date1904 }: WorkbookContent): Finding[] {
  const findings: Finding[] = [];
  const tell = (grade: Grade, found: string, expected: string, advice: string) =>
    findings.push(
      lookFinding("how it is calculated", found, expected, { grade, code: "calculation", advice }),
    );
  const set = (key: string) => look?.settings.get(key);
  if (date1904) {
    const advice = "Set it back: every date is read four years later.";
    tell("wrong", "dates count from 1904", "dates count from 1900", advice);
  }
  if (set("calcPr.fullPrecision") !== undefined && !booleanOf(set("calcPr.fullPrecision"))) {
    const advice = "Set it back, and take the bid anew: values may have been cut for good.";
    tell("wrong", "figures are cut to what is shown", "full precision", advice);
  }
  if (/manual/i.test(set("calcPr.calcMode") ?? "")) {
    const advice = "Set it to automatic, recalculate everything and save.";
    tell("doubtful", "nothing is recalculated unless asked for", "automatic", advice);
  }
  if (booleanOf(set("calcPr.iterate"))) {
    const advice = "Nothing: the template has no circles. Gnumeric sets it by itself.";
    tell("to know", "circles of formulas are calculated round and round", "circles told", advice);
  }
  const objects = set("workbookPr.showObjects");
  if (objects !== undefined && objects !== "all") {
    tell("doubtful", "charts and pictures are not shown", "all shown", "Show them again.");
  }
  return findings;
}

/** Sheets that are calculated by the rules of another program, which counts texts as 0 and reads dates otherwise. */
function asElsewhere(pairs: readonly LookPair[]): Finding[] {
  const on = ({ settings }: LookPair["now"]) =>
    booleanOf(settings.get("sheetPr.transitionEvaluation"));
  return pairs.flatMap(({ found, now, then }) =>
    on(now) === true && on(then) !== true
      ? [
          lookFinding(
            `sheet ${found.name}`,
            "calculated by the rules of an old program",
            "those of this one",
            {
              code: "calculation",
              advice: "Set it back, recalculate everything and save.",
            },
          ),
        ]
      : [],
  );
}

/** What programs keep beside a workbook, and changes nothing of it. */
const harmless = new Set([
  "officeDocument",
  "core-properties",
  "extended-properties",
  "custom-properties",
  "customProperties",
  "metadata/core-properties",
  "thumbnail",
  "worksheet",
  "chartsheet",
  "styles",
  "theme",
  "sharedStrings",
  "calcChain",
  "sheetMetadata",
  "customXml",
  "printerSettings",
  "person",
  "themeOverride",
]);

const meaning: readonly (readonly [RegExp, string])[] = [
  [/vbaProject|macroEnabled/i, "macros"],
  [/macrosheet/i, "a sheet of macros"],
  [/dialogsheet/i, "a sheet of dialogs"],
  [/connections|queryTable/i, "connections to data outside"],
  [/externalLink/i, "links to other workbooks"],
  [/volatileDependencies/i, "an exchange of data with another program"],
  [/extensibility|customUI|userCustomization/i, "buttons and menus of its own"],
  [/attachedToolbars/i, "toolbars of its own"],
  [/webextension|taskpane/i, "programs from the web"],
  [
    /control|activeX|^(Button|Checkbox|Drop|List|Radio|Spin|Scroll|Edit|Dialog|GBox|Label)$/i,
    "controls",
  ],
  [/oleObject|^package$|^Pict$/i, "an object of another program"],
  [/legacyDrawingHF|drawingHF/i, "pictures in the margins of the page"],
  [/^picture$/, "a picture behind the cells"],
  [/^(Shape|Rect|Line|Group|Oval|Arc|Polygon)$/i, "a shape of the old kind over cells"],
  [/^hyperlink$/, "links to places outside"],
  [/pivot/i, "a pivot table"],
  [/slicer|timeline/i, "buttons that filter"],
  [/^table(SingleCells)?$/i, "a table with filters"],
  [/x14 rules/, "conditional formats of a newer kind"],
  [/sparklines/, "small charts within cells"],
  [/AlternateContent/, "parts that only some programs show"],
  [/more than is looked at/, "more rows, rules, shapes or joined cells than are looked at"],
  [/threadedComment/i, "a conversation beside cells"],
];

/** Told, but no fault: they change nothing of what is read. */
const mild = /^(threadedComment|table|tableSingleCells|sparklines)$/i;

function carried(content: WorkbookContent, pairs: readonly LookPair[]): Finding[] {
  const look = content.look;
  if (look === undefined) return [];
  const own = [...look.parts, ...(look.macros ? ["macroEnabled"] : [])];
  const found = new Map<string, { where: string; mild: boolean }>();
  const add = (kind: string, where: string, handout = false) => {
    if (harmless.has(kind)) return;
    const what = meaning.find(([pattern]) => pattern.test(kind))?.[1];
    const said = what ?? `a part of the kind ${short(kind, 40)}`;
    if (!found.has(said))
      found.set(said, {
        where,
        mild: mild.test(kind) || what === undefined || (kind === "hyperlink" && !handout),
      });
  };
  for (const kind of own) add(kind, "the workbook");
  // a link on a page that is handed out is told before those that the office keeps for itself
  const handedOut = [...pairs].sort((a, b) => Number(b.handout) - Number(a.handout));
  for (const { found: sheet, now, then, handout } of handedOut) {
    for (const kind of now.parts) {
      if (!then.parts.includes(kind)) add(kind, `sheet ${sheet.name}`, handout);
    }
  }
  return [...found].map(([what, { where, mild: slight }]) =>
    lookFinding(where, what, "none of that", {
      code: "carried",
      grade: slight ? "to know" : "doubtful",
      advice: slight
        ? "Nothing, if the office put it there."
        : "Do not let a program run or follow it; take the bid anew from the job record.",
    }),
  );
}
