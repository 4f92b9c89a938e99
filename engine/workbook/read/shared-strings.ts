import { setsApart } from "./look/runs.js";
import { spreadsheet } from "./namespaces.js";
import type { Package } from "./package.js";
import { plainStringsIn, type SharedTexts } from "./plain-strings.js";
import { textOf } from "./text.js";

/**
 * Reads the table of shared texts (ISO/IEC 29500-1 §18.4). The runs of a rich text are joined; phonetic
 * text, which says how to pronounce, is left out.
 *
 * @param uneven takes the places of texts of which a run is set apart
 */
export function readSharedStrings(from: Package, part: string, uneven?: Set<number>): SharedTexts {
  const strings: string[] = [];
  let plainly: SharedTexts | undefined;
  let text = "";
  let run = "";
  let space: string | undefined;
  from.walk(part, {
    namespaces: spreadsheet,
    root: "sst",
    bulk: {
      path: "sst",
      cut: (whole) => {
        const plain = plainStringsIn(whole);
        if (plain === undefined) return undefined;
        const { outside, found } = plain;
        const tell = () => {
          from.budget.spend("sharedStrings", found.strings.length, "The workbook");
          plainly = found.strings;
        };
        return { outside, markup: found.markup, tell };
      },
    },
    open(path, attributes) {
      if (path === "sst/si") {
        from.budget.spend("sharedStrings", 1, "The workbook");
        text = "";
      } else if (isText(path)) {
        run = "";
        space = attributes["xml:space"]?.value;
      } else if (path.startsWith(runPath) && setsApart(path.slice(runPath.length), attributes)) {
        uneven?.add(strings.length);
      }
    },
    text(path, piece) {
      if (isText(path)) run += piece;
    },
    close(path) {
      if (isText(path)) text += textOf(run, space);
      else if (path === "sst/si") strings.push(text);
    },
  });
  return plainly ?? strings;
}

const runPath = "sst/si/r/rPr/";

function isText(path: string): boolean {
  return path === "sst/si/t" || path === "sst/si/r/t";
}
