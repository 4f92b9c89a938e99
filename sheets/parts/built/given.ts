import { calc, count, lines } from "../../../engine/template/index.js";
import { plus } from "../added.js";
import type { Whole } from "../brought.js";

/** 1 where one of these inputs is given. */
const anyOf = (...names: string[]): string => `IF(AND(${names.map((one) => `ISBLANK(${one})`).join(",")}),0,1)`;

/** What was typed, group by group: the pages that look back print once there is something. */
export const builtGiven = ({ added }: Pick<Whole, "added">) =>
  lines("What is given", {
    built_dates_told: calc(
      count,
      anyOf("decided_on", "lost_reason", "work_began", "work_ended", "told_by", "told_on"),
      "Dates or reason",
    ),
    built_days_told: calc(
      count,
      anyOf("days_taken", "rain_days_taken", "daily_hours_taken", "inspection_hours_taken"),
      "Days or other hours",
    ),
    built_money_told: calc(
      count,
      anyOf("price_charged", "labor_rate_paid", "electrician_invoiced", "tax_paid"),
      "Sums of money",
    ),
    built_invoices_told: calc(
      count,
      "SUM(built_hires.told)+SUM(built_subcontracts.told)+SUM(invoice_sums.told)",
      "Invoices",
    ),
    built_meters_told: calc(count, `SUM(built_lines.told)${plus(added("metered"))}`, "Flows and depths metered"),
    built_pump_told: calc(count, anyOf("head_metered", "power_metered", "level_metered"), "Pump or basin metered"),
    built_work_told: calc(count, "built_hours_told+built_half_told+built_words_told+built_days_told", "Work told"),
    built_costs_told: calc(count, "built_money_told+built_invoices_told", "Costs told"),
    built_given: calc(
      count,
      "built_dates_told+built_work_told+built_costs_told+built_meters_told+built_pump_told",
      "Things given",
      { strong: true, zero: "none yet" },
    ),
  });
