import { burden, type Rate, site, wage } from "../rates.js";

/** What an hour costs, and what slows it. The values are the office's own. */
export const laborRates: readonly Rate[] = [
  wage("wage-foreman", "Wage of the foreman", "$/hour"),
  wage("wage-operator", "Wage of the machine operator", "$/hour"),
  wage("wage-laborer", "Wage of a laborer", "$/hour"),
  burden("burden-fica", "Social Security and Medicare, employer's part", "percent"),
  burden("burden-unemployment", "Unemployment insurance", "percent"),
  burden("burden-compensation", "Workers' compensation insurance", "percent"),
  burden("burden-health", "Health insurance", "percent"),
  burden("burden-vacation", "Vacation", "percent"),
  burden("burden-holidays", "Holidays", "percent"),
  burden("burden-sick", "Sick days", "percent"),
  burden("burden-tools", "Small tools", "percent"),
  burden("burden-raises", "Rises in wages during the year", "percent"),
  site("access-open", "Access: machine and truck reach the work", "factor"),
  site("access-narrow", "Access: small machine only", "factor"),
  site("access-hand", "Access: by hand and barrow", "factor"),
  site("soil-soft", "Soil: soft", "factor"),
  site("soil-common", "Soil: common earth", "factor"),
  site("soil-hard", "Soil: hard clay, roots", "factor"),
  site("soil-rock", "Soil: rocky", "factor"),
  site("haul-per-hundred-feet", "More time for each ‹100 ft|30.48 m› of haul on site", "percent"),
];
