import { type Block, calc, date, length, lines, text } from "../../../engine/template/index.js";
import { longDate, monthName } from "./words.js";

const centsShown =
  "FIXED(energy_rate/1[$/kWh]*100,IF(ABS(energy_rate/1[$/kWh]*100-ROUND(energy_rate/1[$/kWh]*100,0))<0.005,0,1))";

/** A part of the address line, where it was given. */
const part = (name: string, before = "") => `IF(LEN(${name})>0,", ${before}"&${name},"")`;

/** Figures as the pages say them. */
export const saidLines: Block = lines("Wording of figures", {
  bid_good_until: calc(date, "bid_date+good_for_days", "Bid good until"),
  bid_date_said: calc(text, longDate("bid_date"), "Bid date, in words"),
  bid_good_until_said: calc(text, longDate("bid_good_until"), "Bid good until, in words"),
  dig_inspected_on_said: calc(
    text,
    `IF(ISBLANK(dig_inspected_on),"",${longDate("dig_inspected_on")})`,
    "Inspection date, in words",
  ),
  start_month_said: calc(text, monthName("INT(start_month)"), "Starting month, in words"),
  company_said: calc(
    text,
    `IF(LEN(company)>0,company&${part("company_address")}&${part("company_phone")}&${part("company_license", "license ")},"")`,
    "Company line",
  ),
  runs_length: calc(length, "SUM(runs.length_counted)", "Stream length without pools"),
  basin_falls_by: calc(length, "MAX(0,level_at_rest-level_running)", "Level drop at pump start"),
  watts_said: calc(text, '"about "&FIXED(ROUND(pump_watts/10[W],0)*10,0)&" watts"', "Power"),
  energy_rate_said: calc(text, `${centsShown}&" cents a kilowatt-hour"`, "Price of electricity"),
  energy_month_said: calc(text, "~{energy_cost_a_month|0}", "Power a month"),
});
