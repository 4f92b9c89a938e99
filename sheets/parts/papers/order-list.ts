import {
  calc,
  columnOf,
  count,
  formula,
  money,
  number,
  published,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import type { Whole } from "../brought.js";
import { materialLines } from "../materials/lines.js";
import { extraLines } from "../materials/tables.js";
import { optionTable } from "../price/options.js";

/** Lines that a page of an order holds, and how many pages there are for all suppliers together. */
export const orderLines = 26;
export const orderPages = 8;

const PAGES = formula(
  "PAGES",
  `Pages of ${orderLines} lines that the orders of a supplier take`,
  { suppliers: columnOf(text), supplier: text },
  count,
  `WHOLE_UP(COUNT_WHERE(suppliers,supplier)/${orderLines})`,
  "definition",
);

const NTH = formula(
  "NTH",
  "Which line of its supplier a row is, counted from the top of the list",
  { suppliers: columnOf(text), places: columnOf(number), supplier: text, place: number },
  count,
  "SUMPRODUCT((suppliers=supplier)*(places<=place))",
  "definition",
);

const DECIMALS_NEEDED = formula(
  "DECIMALS_NEEDED",
  "Decimals up to two that a quantity needs, so that 6.5 stands beside 13",
  { quantity: number },
  number,
  "IF(ROUND(quantity,2)=ROUND(quantity,0),0,IF(ROUND(quantity,2)=ROUND(quantity,1),1,2))",
  "definition",
);

const PACKED = formula(
  "PACKED",
  "How many packs, and of how much, a quantity is; nothing where it comes singly",
  { quantity: number, pack: number },
  text,
  'IF(pack>1," = "&FIXED(quantity/pack,0)&" × "&FIXED(pack,DECIMALS_NEEDED(pack)),"")',
  "definition",
);

const QUANTITY_SAID = formula(
  "QUANTITY_SAID",
  "A quantity as it is ordered: without zeros behind its last decimal, tons in the plural, and in packs where it comes in packs",
  { quantity: number, unit: text, pack: number },
  text,
  'FIXED(quantity,DECIMALS_NEEDED(quantity))&" "&unit&IF(AND(unit="ton",quantity<>1),"s","")&PACKED(quantity,pack)',
  "definition",
);

const OUR_NUMBER = formula(
  "OUR_NUMBER",
  "The code of the office book behind what is ordered; nothing where there is none",
  { code: text },
  text,
  'IF(LEN(code)>0," (our no. "&code&")","")',
  "definition",
);

const BOOK_NAME = formula(
  "BOOK_NAME",
  "What the office book calls an item, for whoever sells it; the line's own name where the book has none",
  { descriptions: columnOf(text), at: count, name: text },
  text,
  "IF(at>0,IF(LEN(INDEX(descriptions,MAX(1,at)))>0,INDEX(descriptions,MAX(1,at)),name),name)",
  "definition",
);

const AT_PRICE = formula(
  "AT_PRICE",
  "The price of a unit behind its quantity, to the cent, or finer where it is",
  { price: money },
  text,
  '", at $"&FIXED(price,IF(ROUND(price,2)=ROUND(price,4),2,3))',
  "definition",
);

const PACK_OF = formula(
  "PACK_OF",
  "The pack of an item of the office book, in the unit of the line",
  { packs: columnOf(number), at: count, share: number },
  number,
  "IF(at>0,INDEX(packs,MAX(1,at))*share,1)",
  "definition",
);

const SUPPLIER_OF = formula(
  "SUPPLIER_OF",
  "From whom something is bought, and nothing where it is not",
  { wanted: yesno, supplier: text },
  text,
  'IF(wanted,IF(LEN(supplier)>0,supplier,"Supplier not named"),"")',
  "definition",
);

export const orderFormulas = [
  PAGES,
  NTH,
  DECIMALS_NEEDED,
  PACKED,
  QUANTITY_SAID,
  OUR_NUMBER,
  BOOK_NAME,
  AT_PRICE,
  PACK_OF,
  SUPPLIER_OF,
] as const;

/** Where a line of the list comes from: a row of a table of what is bought, or the pump. */
type Place = { readonly table: string; readonly row: number; readonly taken: boolean } | "pump";

const placesIn = ({ name, rows }: TableBlock, taken = false): Place[] =>
  Array.from({ length: rows }, (_, i) => ({ table: name, row: i + 1, taken }));

/** Is it bought? */
function wantedAt(place: Place): string {
  if (place === "pump") return "LEN(pump_code)>0";
  const wanted = `INDEX(${place.table}.order_quantity,${place.row})>0`;
  return place.taken ? `AND(INDEX(${place.table}.taken,${place.row}),${wanted})` : wanted;
}

/** The pack in which an item of the materials comes, in the unit of its line; of other tables it is not told. */
const packAt = ({ table, row }: Exclude<Place, "pump">) =>
  table === "materials" ? `PACK_OF(items.pack,INDEX(materials.at,${row}),INDEX(materials.book_share,${row}))` : "1";

/** All that could be bought, each with the line of the orders on which it stands. */
export function purchaseList(all: Pick<Whole, "buys" | "takeoff">): TableBlock {
  const places: readonly Place[] = [
    ...placesIn(materialLines(all)),
    ...placesIn(extraLines),
    ...placesIn(optionTable, true),
    "pump",
  ];
  const at = (row: number) => places[row - 1] as Place;
  /** A column, from whichever table the row stands for. */
  const from = (column: string, ofThePump: string) => (row: number) => {
    const place = at(row);
    return place === "pump" ? ofThePump : `INDEX(${place.table}.${column},${place.row})`;
  };
  const [own, code] = [from("description", "pump_description"), from("code", "pump_code")];
  const supplier = from("supplier", "pump_supplier");
  const bought = all.buys.flatMap(({ sheet, buys }) =>
    buys.map(({ sized, said, named }, i) => ({
      named: named !== undefined,
      sheet,
      kind: i + 1,
      said: sized === undefined ? said : `INDEX(${sized},${i + 1})`,
    })),
  );
  /** What a supplier would ask back for: of stone the size of its largest, of other goods size or rating. */
  const words = [...bought, ...all.takeoff].map(({ said }) => said);
  const sized = (row: number) => {
    const said = at(row) === "pump" ? "pump_ordered" : words[row - 1];
    return said === undefined ? "" : `&JOINED(", ",${said})`;
  };
  const isGoods = (place: Place, row: number): place is Exclude<Place, "pump"> =>
    place !== "pump" && place.table === "materials" && bought[row - 1]?.named !== true;
  /**
   * As the office book calls it, for a supplier. What people named, or typed in, keeps its name, and so does an item that is
   * ordered on several lines, or they would be told apart by nothing.
   */
  const what = (row: number) => {
    const place = at(row);
    return isGoods(place, row)
      ? `IF(on_one_line,BOOK_NAME(items.description,INDEX(materials.at,${row}),${own(row)}),${own(row)})`
      : own(row);
  };
  // the liner is ordered as it is cut from the rolls
  const liner = 1 + bought.findIndex(({ sheet, kind }) => sheet === "Liner" && kind === 1);
  const cuts = '&JOINED(": ",TEXTJOIN("; ",TRUE,liner_orders.said))';
  const isFirst = "AND(LEN(supplier)>0,PLACE_OR_ZERO(bought.supplier,supplier)=place)";
  return table(
    "bought",
    "Lines for Orders",
    {
      rows: places.length,
      data: places.map((_, i) => ({ place: i + 1 })),
      note: `Line counts over all pages: ${orderLines} to a page, and each supplier begins a page.`,
    },
    {
      place: published(number, "Row", { source: "the order of this list", decimals: 0 }),
      supplier: calc(text, (row) => `SUPPLIER_OF(${wantedAt(at(row))},${supplier(row)})`, "Supplier"),
      on_one_line: calc(
        yesno,
        (row) =>
          isGoods(at(row), row)
            ? `SUMPRODUCT((materials.code=INDEX(materials.code,${row}))*(materials.order_quantity>0))<=1`
            : "TRUE",
        "Ordered on one line",
      ),
      called: calc(text, what, "Name"),
      what: calc(text, (row) => `called${sized(row)}&OUR_NUMBER(${code(row)})${row === liner ? cuts : ""}`, "What"),
      quantity: calc(
        text,
        (row) => {
          const place = at(row);
          if (place === "pump") return '"1 each"';
          return `QUANTITY_SAID(${from("order_quantity", "")(row)},${from("unit", "")(row)},${packAt(place)})`;
        },
        "Quantity",
      ),
      priced: calc(text, (row) => `quantity&AT_PRICE(${from("unit_cost", "pump_cost")(row)})`, "Quantity, unit price"),
      cost: calc(money, from("cost", "pump_cost"), "Cost before tax"),
      pages: calc(count, `above.pages+IF(${isFirst},PAGES(bought.supplier,supplier),0)`, "Pages so far", {
        first: `IF(${isFirst},PAGES(bought.supplier,supplier),0)`,
      }),
      // 0 where nothing is bought: no page has a line of that number
      line: calc(
        number,
        `IF(supplier<>"",${orderLines}*(PICK(bought.pages,bought.supplier,supplier)-PAGES(bought.supplier,supplier))+NTH(bought.supplier,bought.place,supplier,place),0)`,
        "Line of the orders",
        { decimals: 0 },
      ),
    },
  );
}
