import {
  area,
  type Block,
  calc,
  date,
  hourlyFlow,
  length,
  lines,
  money,
  text,
  weight,
} from "../../../engine/template/index.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import type { Whole } from "../brought.js";

const centsShown =
  "FIXED(energy_rate/1[$/kWh]*100,IF(ABS(energy_rate/1[$/kWh]*100-ROUND(energy_rate/1[$/kWh]*100,0))<0.005,0,1))";

/** Figures as the pages say them. */
export const saidLines = ({ cellsAt }: Pick<Whole, "cellsAt">): Block =>
  lines("Wording of figures", {
    bid_good_until: calc(date, "bid_date+good_for_days", "Bid good until"),
    bid_date_said: calc(text, 'IF(ISBLANK(bid_date),"",DATE_SAID(bid_date))', "Bid date, in words"),
    bid_good_until_said: calc(text, 'IF(ISBLANK(bid_date),"",DATE_SAID(bid_good_until))', "Bid good until, in words"),
    dig_inspected_on_said: calc(
      text,
      'IF(ISBLANK(dig_inspected_on),"",DATE_SAID(dig_inspected_on))',
      "Inspection date, in words",
    ),
    walked_on_said: calc(text, 'IF(ISBLANK(walked_on),"",DATE_SAID(walked_on))', "Walk date, in words"),
    start_month_said: calc(text, "MONTH_SAID(INT(start_month))", "Starting month, in words"),
    company_contact: calc(
      text,
      'TEXTJOIN("  ·  ",TRUE,company_address,company_phone,company_email)&JOINED("  ·  license ",company_license)',
      "Company line",
    ),
    ...cellsAt("figures said"),
    basin_falls_by: calc(length, "MAX(0,level_at_rest-level_running)", "Level drop at pump start"),
    contract_price_said: calc(text, "~{contract_price|2}", "Contract price, in words", { reader: "customer" }),
    watts_said: calc(text, '"about "&FIXED(ROUND(pump_watts/10[W],0)*10,0)&" watts"', "Power"),
    energy_rate_said: calc(text, `${centsShown}&" cents a kilowatt-hour"`, "Price of electricity"),
    energy_month_said: calc(text, "~{energy_cost_a_month|0}", "Power a month"),
    // what stands behind the word about
    flow_about: calc(
      hourlyFlow,
      "ROUND(pump_flow_hourly/1[‹gal/h|L/h›],IF(pump_flow_hourly<1000[‹gal/h|L/h›],-1,-2))*1[‹gal/h|L/h›]",
      "Flow, rounded",
    ),
    energy_year_about: calc(money, "TWO_FIGURES(energy_cost_a_year/1[$])*1[$]", "Power a year, rounded"),
    basin_water_about: calc(
      waterVolume,
      "TWO_FIGURES(basin_water_held/1[‹gal|L›])*1[‹gal|L›]",
      "Water in the basin, rounded",
    ),
    loss_about: calc(waterVolume, "TWO_FIGURES(loss_a_day/1[‹gal|L›])*1[‹gal|L›]", "Lost per day, rounded"),
    heaviest_about: calc(weight, "TWO_FIGURES(heaviest_stone/1[‹lb|kg›])*1[‹lb|kg›]", "Heaviest stone, rounded"),
    lawn_about: calc(area, "TWO_FIGURES(lawn_area/1[‹ft²|m²›])*1[‹ft²|m²›]", "Lawn to repair, rounded"),
  });
