import { book, firstRow } from "../../support/changed-demo.js";
import { asItIs, type FailingCase, priced, without } from "./case.js";

const pump = "P-200V";
const bought = { description: "more foam", code: "foam", needed: 2, unit: "each" };
const expired = { good_until: "2026-10-31" };
const gap = [{ name: "first", share: 0.5 }, null, { name: "last", share: 0.5 }];

/** A list with its own lines of things to buy: takeoff, further lines, options. */
const listed = (table: string): FailingCase[] => [
  [`${table}.priced`, () => ({ [table]: [{ ...bought, code: "no-such-code" }] })],
  [`${table}.priced`, () => ({ [table]: [{ ...bought, unit: "ton" }] })],
  [`${table}.priced`, () => ({ [table]: [bought] }), priced("items", "foam", expired)],
];

const quote = { code: "foam", supplier: "Invented yard", cost: 20, good_until: "2027-04-30" };

export const moneyCases: FailingCase[] = [
  ...listed("additional_items"),
  ...listed("options"),
  ["options.costed", () => ({ options: [{ description: "A bench" }] })],
  // an item that is named, and none of it wanted
  ["options.costed", () => ({ options: [{ description: "Foam", code: "foam", taken: true }] })],
  ["materials.priced", asItIs, without("items", "liner-45mil")],
  ["materials.priced", asItIs, priced("items", "foam", { unit: "ton" })],
  ["materials.priced", asItIs, priced("items", "foam", expired)],
  ["job_quotes.quote_used", () => ({ job_quotes: [{ ...quote, code: "foma" }] })],
  ["job_quotes.quote_used", () => ({ job_quotes: [quote, quote] })],
  ["materials.priced", () => ({ job_quotes: [{ ...quote, good_until: "2026-10-31" }] })],
  [
    "pump_quote_holds",
    () => ({ job_quotes: [{ ...quote, code: pump, good_until: "2026-10-31" }] }),
  ],
  ["items.sound", asItIs, priced("items", "foam", { cost: 0 })],
  ["items.sound", asItIs, priced("items", "foam", { tax_class: "half" })],
  ["prices_own", asItIs, priced("items", "foam", { placeholder: true })],
  ["prices_own", asItIs, priced("rates", "dig", { placeholder: true })],
  ["prices_own", asItIs, priced("pumps", pump, { placeholder: true })],
  ["used_rates.sound", asItIs, without("rates", "dig")],
  ["used_rates.sound", asItIs, priced("rates", "dig", { unit: "ft/hour" })],
  ["used_rates.sound", asItIs, priced("rates", "dig", { value: 0 })],
  // read by a formula, whatever the tasks
  ["used_rates.sound", asItIs, without("rates", "conduit-run")],
  ["pump_quote_holds", asItIs, priced("pumps", pump, expired)],
  ["pump_priced", asItIs, priced("pumps", pump, { cost: 0 })],
  ["pump_tax_known", () => ({ pump_tax_class: "half" })],
  ["prices_outlast_bid", asItIs, priced("pumps", pump, { good_until: "2026-11-20" })],
  ["prices_outlast_start", asItIs, priced("pumps", pump, { good_until: "2027-03-01" })],
  ["contractors_named", () => firstRow("subcontracts", { by: null })],
  ["subcontracts.quote_holds", () => firstRow("subcontracts", { quoted_until: "2026-10-31" })],
  ["risks.in_order", () => ({ risks: [{ risk: "rock", low: 500, likely: 100, high: 900 }] })],
  ["draws_add_up", () => ({ draws: [{ name: "all", share: 0.9 }] })],
  // each thing of a supplier of its own: more pages than the sheet has
  [
    "orders_hold_all",
    asItIs,
    () => ({
      prices: {
        ...book,
        tables: {
          ...book.tables,
          items: (book.tables.items ?? []).map((row, i) => ({ ...row, supplier: `Yard ${i}` })),
        },
      },
    }),
  ],
  [
    "contract_worded",
    asItIs,
    () => ({ prices: { ...book, tables: { ...book.tables, terms: [] } } }),
  ],
  ["price_in_band", () => ({ price_per_foot_most: 500 })],
  ["margin_held", () => ({ discount: 9000 })],
  ["deposit_held", () => ({ deposit_share: 0.1 })],
  ["draws_make_price", () => ({ draws: gap })],
  [
    "contingency_covers_own",
    () => ({ hours_half_over: 0.05, hours_fifth_over: 0.3, hours_over_jobs: 9 }),
  ],
  ["overrun_told_whole", () => ({ hours_fifth_over: 0.3, hours_over_jobs: 9 })],
  [
    "labor_overrun_covered",
    () => ({ margin_wanted: 0, contingency_share: 0, labor_overrun_tested: 1 }),
  ],
];
