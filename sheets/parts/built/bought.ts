import {
  calc,
  count,
  input,
  lines,
  money,
  prose,
  published,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import type { Whole } from "../brought.js";
import { capacity } from "../capacity.js";
import { orderPages } from "../papers/order-list.js";
import { toldOrNot } from "./told.js";

const invoice = { optional: true, least: 0, most: 1e6 } as const;

const ordered = "SUM_WHERE(bought.cost,bought.supplier,supplier)";

const anInvoice = "OR(LEN(supplier)>0,NOT(ISBLANK(invoiced)))";

/** Invoices of suppliers, several of one where need be. */
export const builtInvoices = table(
  "built_invoices",
  "Invoices of suppliers",
  {
    rows: orderPages,
    filled: anInvoice,
    note: "Before tax. The cost planned is that of sheet Orders; of several rows of one supplier the first has it. A zero was invoiced; a blank is not told.",
  },
  {
    supplier: input(text, "Supplier", { optional: true }),
    planned: calc(
      money,
      (row) => `IF(AND(LEN(supplier)>0,PLACE_OR_ZERO(built_invoices.supplier,supplier)=${row}),${ordered},0)`,
      "Cost planned",
      { decimals: 2 },
    ),
    invoiced: input(money, "Invoiced", invoice),
    known: calc(yesno, "AND(LEN(supplier)>0,LISTED(bought.supplier,supplier))", "On Orders", { blank: "TRUE" }),
  },
);

/** What the sums of the invoices are made of: it is no part of what is typed, and is not printed with it. */
export const invoiceSums = table(
  "invoice_sums",
  "Steps of the invoices",
  { rows: orderPages, beside: "built_invoices", filled: anInvoice },
  {
    told: calc(count, "IF(ISBLANK(invoiced),0,1)", "Told"),
    told_of: calc(text, 'IF(told=1,supplier&"","")', "Supplier told"),
    planned_told: calc(
      money,
      (row) => `IF(AND(LEN(told_of)>0,PLACE_OR_ZERO(invoice_sums.told_of,told_of)=${row}),${ordered},0)`,
      "Planned of what is told",
      { note: "Once for each supplier, in the first row that has an invoice." },
    ),
    like: calc(text, 'IF(invoiced>0,supplier&": "&FIXED(invoiced/1[$],2),"")', "Supplier and sum"),
    again: calc(
      count,
      (row) => `IF(AND(LEN(like)>0,PLACE_OR_ZERO(invoice_sums.like,like)<>${row}),1,0)`,
      "Same as a row before",
    ),
  },
);

const suppliers = (from: number, to: number): string =>
  `TEXTJOIN(", ",TRUE,${Array.from({ length: to - from + 1 }, (_, i) => `order_${from + i}_supplier`).join(",")})`;
const half = orderPages / 2;

/** To whom the orders go, so that an invoice is told of the same. */
export const suppliersSaid = prose("Suppliers of sheet Orders", {
  suppliers_said: calc(text, suppliers(1, half), "Suppliers"),
  more_suppliers_said: calc(text, suppliers(half + 1, orderPages), "More suppliers"),
});

/** Machines, trucks and the rest of the list of hire. */
export const builtHires = ({ hires }: Pick<Whole, "hires">): TableBlock =>
  table(
    "built_hires",
    "Equipment, hauling and site",
    {
      shown: "planned>0",
      rows: hires.length,
      beside: "equipment",
      data: hires.map(({ what }) => ({ what })),
    },
    {
      what: published(text, "What", { source: "the list of hire of this template" }),
      planned: calc(money, "cost", "Cost planned", { decimals: 2 }),
      invoiced: input(money, "Invoiced", invoice),
      told: calc(count, "IF(ISBLANK(invoiced),0,1)", "Told", toldOrNot),
    },
  );

/** Work that others quoted. */
export const builtSubcontracts = table(
  "built_subcontracts",
  "Work by others",
  { rows: capacity.subcontracts, beside: "subcontracts", shown: "planned>0" },
  {
    work_done: calc(text, "said", "Work"),
    planned: calc(money, "amount", "Cost planned", { decimals: 2 }),
    invoiced: input(money, "Invoiced", invoice),
    told: calc(count, "IF(ISBLANK(invoiced),0,1)", "Told", toldOrNot),
  },
);

/** Money that stands in no list. */
export const builtMoney = lines("Other invoices", {
  electrician_invoiced: input(money, "Electrician, by the hour", invoice),
  tax_paid: input(money, "Sales tax paid", { ...invoice, note: "On materials and pump." }),
});
