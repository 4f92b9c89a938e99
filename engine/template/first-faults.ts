import { text } from "../units/quantity.js";
import {
  type Block,
  calc,
  isOffice,
  type LinesBlock,
  published,
  type SheetDeclaration,
  type TableBlock,
  table,
  unprinted,
} from "./declare.js";
import { toldWhereTyped } from "./implied.js";
import { overridden, statusKey, statusName } from "./implied-names.js";
import { hasStatus } from "./input-status.js";
import { textLiteral } from "./sentence.js";
import { inputsOn, tableShown } from "./spread.js";

/** The table of what is the first input at fault, table by table of each sheet. */
export const firstFaults = "first_faults";

/** As many cells are asked one after another in a formula. */
const mostAsked = 20;

interface Place {
  readonly sheet: string;
  readonly name: string;
  /** What stands there of the first input at fault, with its row; "" where none is. */
  readonly said: string;
}

/**
 * Where an input is missing or breaks its rule, by sheet and in the order of its rows: `first` is of each sheet the place
 * in the table at which its first one is known. Undefined where no sheet asks for anything.
 */
export function firstFaultsTable(
  sheets: readonly SheetDeclaration[],
): { block: Block; first: ReadonlyMap<string, string> } | undefined {
  // what is typed after the work is read by no other sheet
  const places = sheets.flatMap((one) =>
    one.afterwards ? [] : one.blocks.flatMap((block) => placesIn(block, one.name)),
  );
  if (places.length === 0) return undefined;
  const of = (row: number) => places[row - 1] as Place;
  const begins = (row: number) => places[row - 2]?.sheet !== of(row).sheet;
  const made = table(
    firstFaults,
    "First input at fault, sheet by sheet",
    { rows: places.length, data: places.map(({ sheet, name }) => ({ sheet, place: name })) },
    {
      sheet: published(text, "Sheet", { source: "the sheets of this template" }),
      place: published(text, "Place", { source: "the sheets of this template" }),
      said: calc(text, (row) => of(row).said, "First at fault"),
      until: calc(
        text,
        (row) => (begins(row) ? "said" : 'IF(LEN(above.until)>0,above.until,said&"")'),
        "First of its sheet",
        { first: "said" },
      ),
    },
  );
  const first = new Map(
    places.map(({ sheet }, i) => [sheet, `INDEX(${firstFaults}.until,${i + 1})`]),
  );
  return { block: unprinted(made), first };
}

function placesIn(block: Block, sheet: string): Place[] {
  const shown = tableShown(block);
  if (shown !== undefined) return placeOf(block, shown, sheet);
  return block.kind === "lines" ? placesOfLines(block, sheet) : [];
}

/** The rows of a table; where they are too many to be asked one by one, the table alone. */
function placeOf(block: Block, shown: TableBlock, sheet: string): Place[] {
  const where = block.kind === "part" ? sheet : undefined;
  const inputs = inputsOn(shown, where);
  if (inputs.length === 0) return [];
  const column = `${shown.name}.${statusKey(where)}`;
  const others = [
    ...toldWhereTyped(shown, inputs).map(([, says]) => says),
    ...(inputs.some(([, one]) => isOffice(one)) ? [overridden] : []),
  ].map(textLiteral);
  const [heading = shown.name] = shown.heading.split(",");
  const name = heading === "" ? shown.name : heading;
  if (shown.rows > mostAsked) {
    const faulty = [`(${column}<>"")`, ...others.map((says) => `(${column}<>${says})`), "1"].join(
      "*",
    );
    const words = textLiteral(`${name}: an input is missing or breaks its rule`);
    return [{ sheet, name, said: `IF(SUMPRODUCT(${faulty})>0,${words},"")` }];
  }
  const rows = Array.from({ length: shown.rows }, (_, i) => {
    const status = `INDEX(${column},${i + 1})`;
    const faulty = [`LEN(${status})>0`, ...others.map((says) => `${status}<>${says}`)];
    const condition = faulty.length === 1 ? faulty[0] : `AND(${faulty.join(",")})`;
    return { condition, words: `${textLiteral(`${name}, row ${i + 1}: `)}&${status}` };
  });
  return [{ sheet, name, said: inTurn(rows) }];
}

/** Single inputs, a handful at a time. */
function placesOfLines({ heading, cells }: LinesBlock, sheet: string): Place[] {
  const asked = Object.entries(cells).filter(([, cell]) => hasStatus(cell));
  const places: Place[] = [];
  for (let from = 0; from < asked.length; from += mostAsked) {
    const some = asked.slice(from, from + mostAsked).map(([name, cell]) => {
      const status = statusName(name);
      return {
        condition: isOffice(cell) ? `LEFT(${status},1)="←"` : `LEN(${status})>0`,
        words: `${textLiteral(`${cell.label}: `)}&${status}`,
      };
    });
    places.push({ sheet, name: heading, said: inTurn(some) });
  }
  return places;
}

const inTurn = (asked: readonly { condition: string | undefined; words: string }[]): string =>
  asked.reduceRight((rest, { condition, words }) => `IF(${condition},${words},${rest})`, '""');
