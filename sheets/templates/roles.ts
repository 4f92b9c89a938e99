import { builtRole } from "../parts/built/role.js";
import { headingMark } from "../plan/page-line.js";

/** What the engine needs to know of a water feature's cells, whichever template it is. */
export const roles = {
  price: "price",
  exact: "price_exact",
  cost: "total_cost",
  contingency: "contingency_cost",
  overrun: {
    half: "hours_half_over",
    fifth: "hours_fifth_over",
    jobs: "hours_over_jobs",
    source: "hours_over_source",
    moves: "labor_with_overhead",
    covered: "contingency_to_eighty",
    pace: ["tasks.override_rate"],
  },
  title: "job_title",
  customer: "customer",
  described: "described",
  toSend: "prices_to_renew",
  logo: "company_logo",
  givers: {
    walkedBy: "walked_by",
    walkedOn: "walked_on",
    chosenBy: "estimator",
    builtBy: "told_by",
    builtOn: "told_on",
  },
  built: builtRole,
  sections: [
    { label: "Material", name: "material_cost" },
    { label: "Labor", name: "labor_in_price" },
    { label: "Equipment, hauling and site", name: "equipment_cost" },
    { label: "Work by others", name: "subcontract_cost" },
    { label: "Overhead", name: "overhead_cost" },
    { label: "Contingency", name: "contingency_cost" },
    { label: "Profit", name: "profit" },
  ],
  goodUntil: "items.good_until",
  agreed: {
    name: "proposal",
    lines: "proposal_lines.says",
    draftMark: "DRAFT",
    marks: ["•", headingMark.trim()],
    sum: "contract_price",
    sumSaid: "proposal_price",
    number: "proposal_number",
    site: "site",
    contractor: "company",
    days: "work_days",
    draws: { name: "draws.name", amount: "draws.amount" },
  },
} as const;

/** The figures that a bid is told by, whichever template it is of. */
export const headline = [
  ...["price", "margin", "man_hours", "work_days"],
  ...["total_flow", "total_dynamic_head", "pump_watts"],
  ...["basin_water_held", "basin_water_needed", "total_cost"],
] as const;
