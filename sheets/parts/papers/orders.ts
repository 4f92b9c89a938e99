import { calc, date, money, number, type TableBlock, table, text } from "../../../engine/template/index.js";

const picked = (column: string) => `INDEX(order_list.${column},from_row)`;

/** What to order: the lines of the list that are wanted, supplier by supplier. */
export const purchase = ({ rows }: TableBlock): TableBlock =>
  table(
    "orders",
    "To order",
    {
      rows,
      beside: "order_list",
      filled: "SMALL(order_list.rank,place)<1000000",
      note: "Waste and whole packs are in the quantities; sales tax is not in the costs.",
    },
    {
      what: calc(text, picked("what"), "What"),
      supplier: calc(text, picked("supplier"), "Supplier"),
      quantity: calc(number, picked("order_quantity"), "Order quantity"),
      unit: calc(text, picked("unit"), "Unit"),
      cost: calc(money, picked("cost"), "Cost before tax"),
      good_until: calc(date, picked("good_until"), "Good until"),
      code: calc(text, picked("code"), "Item code"),
      note: calc(text, picked("note"), "Note"),
    },
  );
