import {
  calc,
  check,
  decide,
  hours,
  length,
  lines,
  money,
  office,
  text,
  walk,
  yesno,
} from "../../../engine/template/index.js";
import { countedIn } from "../../tables/trade-units.js";
import { rate } from "../../vocabulary/rate.js";

export const electricalWork = ["by us", "by an electrician in our price", "by the customer"];

const byElectrician = 'electrical_work="by an electrician in our price"';

/** Who does the circuit: that decides what of it stands in materials, labor and price. */
export const electricWork = lines("Who does the circuit", {
  electrical_work: decide(text, "Electrical work", {
    default: "by an electrician in our price",
    choices: electricalWork,
    note: "By us: our own licensed electrician. By the customer: the proposal leaves it out in words.",
  }),
  panel_distance: walk(length, "Conduit from panel to pump", {
    section: "Power and water",
    default: 60,
    least: 1,
    most: 1000,
    source: "common practice, no source",
  }),
  wire_ends: office(length, "Wire beyond the conduit", {
    note: "Both ends together.",
    default: 6,
    least: 0,
    most: 50,
    source: "common practice, no source",
  }),
  electric_quote: calc(
    money,
    "SUMPRODUCT((subcontracts.electrical=TRUE)*subcontracts.amount)",
    "Electrician's quotes",
    { note: "The rows of work by others on sheet Decisions that are marked electrical." },
  ),
  electric_counted: calc(
    yesno,
    `OR(electrical_work="by us",AND(${byElectrician},electric_quote<=0[$]))`,
    "Circuit priced item by item",
    { working: true, note: "An electrician's quote takes the place of material and hours." },
  ),
  conduit_wanted: calc(length, "IF(electric_counted,panel_distance,0[ft])", "Conduit to buy"),
  wire_wanted: calc(length, "IF(electric_counted,3*(panel_distance+wire_ends),0[ft])", "Wire to buy", {
    note: "Two conductors and ground.",
  }),
  conduit_trench: calc(length, 'IF(electrical_work="by the customer",0[ft],panel_distance)', "Trench for the conduit", {
    working: true,
    note: "Where the electrician digs it, set shared to yes in trenches on sheet Decisions.",
  }),
  conduit_hours: calc(
    hours,
    `HOURS_AT(${countedIn("conduit_wanted", "ft")},${rate("conduit-run")})`,
    "Electrician's hours, conduit and wire",
    { working: true },
  ),
  electrician_hours: calc(
    hours,
    `conduit_hours+HOURS_AT(IF(electric_counted,1,0),${rate("circuit-fitted")})`,
    "Electrician's hours",
    { working: true },
  ),
  electrician_cost: calc(
    money,
    `IF(${byElectrician},ROUND(electrician_hours/1[h]*${rate("electrician-hour")},2),0)*1[$]`,
    "Electrician, by the hour",
    { strong: true },
  ),
  electrician_quoted: check(
    "electrician_cost<=0[$]",
    "The electrician is priced at {electrician_hours} by the book's rate, {electrician_cost}. Enter a quote, marked electrical, under Work by others on sheet Decisions.",
    { label: "Electrician not quoted", level: "look" },
  ),
  quote_fits_work: check(
    `OR(electric_quote<=0[$],${byElectrician})`,
    "Quotes marked electrical make {electric_quote}, but electrical_work is {electrical_work}. Choose the electrician in electrical_work on sheet Decisions.",
    { label: "Electrician's quote not used" },
  ),
});
