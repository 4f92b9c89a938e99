import { drawing, spreadsheet } from "../namespaces.js";
import type { Package } from "../package.js";
import type { Relationship } from "../relationships.js";
import { textOf } from "../text.js";
import type { Attributes } from "../xml.js";
import { type DrawnChart, readChart } from "./charts.js";
import type { Drawn, SheetLook } from "./content.js";

const kinds = /\/(pic|sp|cxnSp|graphicFrame|contentPart)$/;
const corner = /^wsDr\/(?:AlternateContent\/\w+\/)?\w+Anchor\/(from|to)\/(row|col)(Off)?$/;
/** What comes after so many is not looked at, which is told. */
const mostDrawn = 500;

type Corners = Partial<Record<"from" | "to", { row: number; column: number }>> &
  Partial<Pick<Drawn, "size" | "inset">>;
const sizePath = /^wsDr\/(?:AlternateContent\/\w+\/)?\w+Anchor\/ext$/;
const emuInPoint = 12700;

/** Reads what is drawn over the cells of a sheet (ISO/IEC 29500-1 §20.5), its charts and its notes. */
export function readDrawn(
  from: Package,
  links: readonly Relationship[],
): Pick<SheetLook, "drawn" | "charts" | "notes" | "openNotes"> & { readonly boxes: string[] } {
  const drawn: Drawn[] = [];
  const charts: DrawnChart[] = [];
  const notes = new Map<string, string>();
  const boxes: string[] = [];
  let openNotes = 0;
  for (const { type, target } of links) {
    if (target === undefined || !from.has(target)) continue;
    if (type === "drawing") {
      const own = readDrawing(from, target);
      drawn.push(...own);
      if (own.length >= mostDrawn) boxes.push("more than is looked at");
      for (const chart of from.relationshipsOf(target)) {
        if (chart.type === "chart" && chart.target !== undefined && from.has(chart.target)) {
          charts.push(readChart(from, chart.target));
        }
      }
    } else if (type === "comments") readNotes(from, target, notes);
    else if (type === "vmlDrawing") {
      const old = from.text(target);
      openNotes += old.match(/<x:Visible\b/g)?.length ?? 0;
      for (const [, kind = ""] of old.matchAll(/ObjectType\s*=\s*["'](\w+)["']/g)) {
        if (kind !== "Note") boxes.push(kind);
      }
    }
  }
  return { drawn, charts, notes, openNotes, boxes };
}

function readDrawing(from: Package, part: string): Drawn[] {
  const found: { kind: string; text: string }[] = [];
  const all: Drawn[] = [];
  let corners: Corners = {};
  let digits = "";
  const open = (path: string) => {
    const kind = kinds.exec(path)?.[1];
    if (kind !== undefined && all.length + found.length < mostDrawn) found.push({ kind, text: "" });
  };
  from.walk(part, {
    namespaces: drawing,
    root: "wsDr",
    open(path, attributes) {
      digits = "";
      open(path);
      if (sizePath.test(path)) corners = { ...corners, size: sizeOf(attributes) };
    },
    text(path, piece) {
      if (corner.test(path)) digits += piece;
      const last = found.at(-1);
      if (path.endsWith("/t") && last !== undefined) {
        last.text = `${last.text} ${piece}`.slice(0, 500);
      }
    },
    close(path) {
      const [, end, axis, isInset] = corner.exec(path) ?? [];
      if (isInset !== undefined && (end === "from" || end === "to")) {
        const inset = { row: 0, column: 0, ...corners.inset?.[end] };
        inset[axis === "row" ? "row" : "column"] = Number(digits) / emuInPoint || 0;
        corners = { ...corners, inset: { ...corners.inset, [end]: inset } };
      } else if (end === "from" || end === "to") {
        const place = corners[end] ?? { row: 0, column: 0 };
        place[axis === "row" ? "row" : "column"] = Number(digits) + 1;
        corners[end] = place;
      }
      if (/^wsDr\/(?:AlternateContent\/\w+\/)?\w+Anchor$/.test(path)) {
        all.push(...found.splice(0).map((one) => ({ ...one, text: one.text.trim(), ...corners })));
        corners = {};
      }
    },
  });
  return all;
}

function sizeOf({ cx, cy }: Attributes): { width: number; height: number } {
  const points = (emu: string | undefined) => Number(emu ?? Number.NaN) / emuInPoint;
  return { width: points(cx?.value), height: points(cy?.value) };
}

function readNotes(from: Package, part: string, notes: Map<string, string>): void {
  let address = "";
  let run = "";
  let text = "";
  const isText = (path: string) => /^comments\/commentList\/comment\/text\/(r\/)?t$/.test(path);
  from.walk(part, {
    namespaces: spreadsheet,
    root: "comments",
    open(path, attributes) {
      if (path === "comments/commentList/comment") {
        address = attributes.ref?.value ?? "";
        text = "";
      } else if (isText(path)) run = "";
    },
    text(path, piece) {
      if (isText(path)) run = (run + piece).slice(0, 32767);
    },
    close(path) {
      if (isText(path)) text += textOf(run, "preserve");
      else if (path === "comments/commentList/comment" && notes.size < 5000) {
        notes.set(address, text);
      }
    },
  });
}
