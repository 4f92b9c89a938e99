import type { Cell, Model } from "../../template/model.js";
import { addressOf } from "../read/address.js";
import type { CellContent, WorkbookContent } from "../read/content.js";
import { driftOf, fits, homeOf, placesByDrift, type SheetDrift } from "./drift.js";
import { findNamed } from "./named.js";
import { isSamePlace, type Place, written } from "./place.js";
import type { MatchedCell, StrayName, WorkbookMatch } from "./result.js";

const blank: CellContent = { value: null };

/**
 * Finds every cell of a model in a workbook that people edited and other programs saved.
 *
 * Single cells are found by their defined name, columns by their range name, wherever these
 * have moved. Cells that the compiler implies have no name: they are found on the line of the
 * cell they belong to. A row inserted within a table makes its ranges longer; the line without
 * formulas is listed under `inserted`, and the rows of the table are those around it.
 * Never throws; what is not found is listed under `missing`.
 */
export function matchWorkbook(content: WorkbookContent, model: Model): WorkbookMatch {
  const sheets = new Map(
    content.sheets.filter(({ read }) => read).map((sheet) => [sheet.name, sheet]),
  );
  const global = content.names.filter(({ scope }) => scope === undefined);
  const names = new Map(global.map((one) => [one.name.toLowerCase(), one]));
  const named = findNamed(model, names, sheets);
  const places = new Map<Cell, Place>();
  const reasons = new Map<Cell, string>();
  for (const [cell, found] of named.found) {
    if (typeof found === "string") reasons.set(cell, found);
    else places.set(cell, found);
  }
  const drifts = driftOf(model, places);
  const matched = ({ sheet, line, column }: Place): MatchedCell => {
    const address = addressOf({ row: line, column });
    return { sheet, address, cell: sheets.get(sheet)?.cells.get(address) ?? blank };
  };
  const stray = strayNames(places, drifts);
  for (const cell of model.cells) {
    if (!cell.implied) continue;
    const drift = drifts.get(cell.sheet);
    const likely = drift === undefined ? [] : placesByDrift(cell, drift);
    const found =
      likely.length === 1
        ? likely[0]
        : (likely.find((place) => matched(place).cell.formula !== undefined) ?? likely[0]);
    if (found !== undefined) places.set(cell, found);
    else reasons.set(cell, `its sheet ${cell.sheet} was not found`);
  }
  const at = new Map<string, MatchedCell>();
  for (const cell of model.cells) {
    const place = places.get(cell);
    if (place !== undefined) at.set(cell.id, matched(place));
  }
  return {
    at,
    missing: model.cells.flatMap((cell) => {
      const reason = reasons.get(cell);
      return reason === undefined ? [] : [{ id: cell.id, name: cell.name, reason }];
    }),
    moved: model.cells.flatMap((cell) => {
      const place = places.get(cell);
      if (place === undefined || isSamePlace(cell, place)) return [];
      return [{ id: cell.id, from: written(cell), to: written(place) }];
    }),
    stray,
    inserted: named.inserted,
    shadowed: shadowedNames(content, model, drifts),
    sheets: new Map([...drifts].map(([name, { sheet }]) => [name, sheet])),
  };
}

function strayNames(
  places: ReadonlyMap<Cell, Place>,
  drifts: ReadonlyMap<string, SheetDrift>,
): WorkbookMatch["stray"] {
  const stray = new Map<string, StrayName>();
  for (const [cell, place] of places) {
    const drift = drifts.get(cell.sheet);
    if (stray.has(cell.name) || fits(cell, place, drift)) continue;
    const home = cell.row === undefined && drift !== undefined ? homeOf(cell, drift) : undefined;
    const at = home && {
      sheet: home.sheet,
      address: addressOf({ row: home.line, column: home.column }),
    };
    stray.set(cell.name, { name: cell.name, to: written(place), ...(at && { home: at }) });
  }
  return [...stray.values()];
}

function shadowedNames(
  content: WorkbookContent,
  model: Model,
  drifts: ReadonlyMap<string, SheetDrift>,
): WorkbookMatch["shadowed"] {
  const own = new Set(model.cells.filter((one) => !one.implied).map((one) => one.name));
  const sheets = new Set([...drifts.values()].map(({ sheet }) => sheet));
  return content.names.flatMap(({ name, scope }) =>
    scope !== undefined && sheets.has(scope) && own.has(name.toLowerCase())
      ? [{ name: name.toLowerCase(), sheet: scope }]
      : [],
  );
}
