import {
  type Block,
  calc,
  check,
  count,
  date,
  decide,
  lines,
  money,
  panel,
  place,
  row,
  table,
  text,
} from "../../../engine/template/index.js";
import { quotedOr } from "../materials/job-quotes.js";
import { orderLines, orderPages } from "./order-list.js";

const pages = Array.from({ length: orderPages }, (_, i) => i + 1);

/** What the office says of its orders. */
export const orderChoices = lines("Orders", {
  order_number: decide(text, "Purchase order no.", {
    section: "Job",
    optional: true,
    note: "Each supplier's order adds a number of its own. Blank: to be written on the paper.",
  }),
  needed_on_site: decide(date, "Goods needed by", {
    section: "Job",
    optional: true,
    note: "As the orders say it. Blank: by the start of the work.",
  }),
});

/** What stands on every order alike. */
export const ordersSaid = lines("Wording of orders", {
  // no day is known where the job gives its month alone
  needed_by_start: calc(
    text,
    '"the start of the work"&IF(ISBLANK(bid_date),": ____________",", "&start_said)',
    "Needed by the start",
  ),
  needed_by_said: calc(
    text,
    "IF(ISBLANK(needed_on_site),needed_by_start,DATE_SAID(needed_on_site))",
    "Needed by, in words",
  ),
  start_said: calc(
    text,
    'IF(LEN(start_words)>0,start_words,start_month_said&" "&RIGHT(DATE_SAID(work_starts),4))',
    "Work start, in words",
  ),
  pump_supplier: calc(
    text,
    `IF(pump_row>0,${quotedOr("supplier", "pump_code", "INDEX(pumps.supplier,MAX(1,pump_row))")},"")`,
    "Supplier of the pump",
  ),
  pump_ordered: calc(
    text,
    'IF(pump_row>0,"for "&pump_volts&JOINED(", outlet ",INDEX(pumps.outlet_size,MAX(1,pump_row))),"")',
    "Pump, as ordered",
  ),
  pump_volts: calc(text, "~{supply_voltage|0}", "Pump supply, in words"),
  ship_to_said: calc(text, 'site&JOINED(". Set down: ",stone_drop)', "Ship to, in words"),
});

/** No line is lost between the list and the pages. */
export const ordersHeld = lines("Orders made out", {
  orders_made: calc(count, "MAX(bought.pages)", "Pages of orders"),
  lines_ordered: calc(count, pages.map((k) => `order_${k}_lines`).join("+"), "Lines on the orders"),
  orders_hold_all: check(
    'SUMPRODUCT((bought.supplier<>"")*1)=lines_ordered',
    `Orders take {orders_made|0} pages, but there are ${orderPages}, see sheet Orders: lines are missing. Name fewer suppliers in the office book, or order by hand.`,
    { label: "Orders lack lines", level: "look" },
  ),
});

/** A cell of the order on page `k`. */
const nameOf = (k: number) => (what: string) => `order_${k}_${what}`;

/** Lines on the pages before. */
const linesBefore = (k: number) => (k - 1) * orderLines;

/** What the list of all that is bought says of a line of the order. */
function lineOf(k: number) {
  const name = nameOf(k);
  return (column: string, line: string, otherwise: string) =>
    `IF(${line}<=${name("lines")},PICK(bought.${column},bought.line,${linesBefore(k)}+${line}),${otherwise})`;
}

/** Who orders from whom, to be brought where, and when. */
function headOf(k: number): Block {
  const [name, before] = [nameOf(k), linesBefore(k)];
  const cell = (what: string, formula: string) => [name(what), calc(text, formula, "")] as const;
  return panel(
    [
      row(28, place([1, 9], "name", cell("company", "company")), place([10, 3], "logo", "", { down: 2 })),
      row(18, place([1, 9], "small", cell("contact", "company_contact"))),
      row(
        22,
        // nobody orders by a bid that does not stand, or is not described whole
        place(
          [1, 8],
          "title",
          cell("title", 'IF(AND(bid_stands,described),"Purchase order","DRAFT, not to be sent: purchase order")'),
        ),
        place([9, 1], "label", "No."),
        place([10, 3], "field", cell("number", `IF(LEN(order_number)>0,order_number&"-${k}","")`)),
      ),
      row(6),
      row(
        18,
        place(
          [1, 8],
          "title",
          cell("supplier", `IF(${name("lines")}>0,PICK(bought.supplier,bought.line,${before}+1),"")`),
        ),
        place([9, 4], "text", cell("sheet", `~Order ${k} of {orders_made|0}`)),
      ),
      row(6),
      row(16, place([1, 2], "label", "Ship to"), place([3, 10], "text", cell("ship", "ship_to_said"))),
      row(
        16,
        place([1, 2], "label", "Needed by"),
        place([3, 6], "strong", cell("need", "needed_by_said")),
        place([9, 2], "label", "Items"),
        place([11, 2], "right", [
          name("lines"),
          calc(
            count,
            `SUMPRODUCT((bought.line>${before})*(bought.line<=${before + orderLines}))`,
            "Lines on the order",
          ),
        ]),
      ),
    ],
    { newPage: true, unlessZero: name("lines") },
  );
}

function listOf(k: number): Block {
  const [name, at] = [nameOf(k), lineOf(k)];
  return table(
    `order_${k}`,
    "",
    {
      rows: orderLines,
      paper: {
        across: { what: [1, 6], quantity: [7, 4], cost: [11, 2] },
        right: ["quantity", "cost"],
        header: true,
        used: name("lines"),
        height: 18,
      },
    },
    {
      what: calc(text, (line) => at("what", `${line}`, '""'), "What"),
      quantity: calc(text, (line) => at("priced", `${line}`, '""'), "Quantity, unit price"),
      cost: calc(money, (line) => at("cost", `${line}`, "0[$]"), "Amount", { zero: " ", decimals: 2 }),
    },
  );
}

/** What it comes to, and where it is signed. */
function footOf(k: number): Block {
  const name = nameOf(k);
  return panel([
    row(
      20,
      place([1, 8], "label", ""),
      place([9, 2], "strong", "Before tax"),
      place([11, 2], "right", [
        name("total"),
        calc(money, `SUM(order_${k}.cost)`, "Order before tax", { zero: " ", decimals: 2 }),
      ]),
    ),
    row(
      16,
      place(
        [1, 12],
        "small",
        "Please confirm quantities, prices and the day of delivery by return. Call the day before you deliver.",
      ),
    ),
    row(
      30,
      place([1, 2], "label", "Ordered by"),
      place([3, 5], "field", ""),
      place([9, 1], "label", "Date"),
      place([10, 3], "field", ""),
    ),
    row(12),
  ]);
}

/** A page of the orders. */
const page = (k: number): Block[] => [headOf(k), listOf(k), footOf(k)];

/** What to order: a page of its own for each supplier, and none of another's lines or prices on it. */
export const orders = (): Block[] => pages.flatMap(page);
