import { burden, type Rate, site, wage } from "../rates.js";

const handDig = "labor factors of a builders' academy; ILO/ASIST Technical Brief 2 (from memory)";

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
  site("soil-soft", "Soil: soft", "factor", 0.85),
  site("soil-common", "Soil: common earth", "factor", 1),
  site("soil-hard", "Soil: hard clay, roots", "factor", 1.3),
  site("soil-rock", "Soil: rocky", "factor", 1.7),
  site("soil-hand-soft", "Soil by hand: soft", "factor", 0.65, handDig),
  site("soil-hand-common", "Soil by hand: common earth", "factor", 1, handDig),
  site("soil-hand-hard", "Soil by hand: hard clay, roots", "factor", 1.45, handDig),
  site("soil-hand-rock", "Soil by hand: rocky", "factor", 4.4, handDig),
];
