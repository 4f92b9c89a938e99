import type { SheetDeclaration } from "../../engine/template/index.js";

/** A worksheet without its blocks, which the parts bring. */
export type Worksheet = Omit<SheetDeclaration, "blocks">;

const page = { handout: true, page: true } as const;

/** The worksheets of a water feature in their order, and what each is for. */
export const worksheets = [
  { name: "Job", purpose: "Whom the bid is for, when, and how the water feature will be run." },
  {
    name: "Falls",
    purpose:
      "The falls: the flow that each look wants, what arrives, and how the water goes over the lip.",
  },
  {
    name: "Stream",
    purpose:
      "The stream between the falls: depth, banks, and the water that is out of the basin while it runs.",
  },
  {
    name: "Piping",
    purpose:
      "The lines and the main: flow and head that each line needs, its valve setting, and what the main loses.",
  },
  {
    name: "Balance",
    purpose:
      "How the pump's flow really divides between the lines: all valves open at full speed, and as set.",
  },
  {
    name: "Pump",
    purpose: "Which pump brings the water up, at which speed, and what it costs to run.",
  },
  {
    name: "Electric",
    purpose:
      "The circuit of pump and lights: load, breaker, wire, voltage drop; who does it, and what of it is in the price.",
  },
  {
    name: "Basin",
    purpose:
      "The buried basin: does it hold the water that the stream takes up, and the days between fills?",
  },
  {
    name: "Liner",
    purpose:
      "The pieces of liner from the geometry, how to cut them from stocked rolls, and who can carry them.",
  },
  {
    name: "Stone",
    purpose:
      "Stone by class: from the ground it covers to weight and loads, and the heaviest stone against the machine.",
  },
  {
    name: "Earthwork",
    purpose:
      "Strip, dig, trench, berm, haul; trees and walls; and whether the dig is safe to stand in.",
  },
  {
    name: "Labor",
    purpose:
      "Hours from quantities and production rates, slowed by the site; crew, machine and days of work.",
  },
  {
    name: "Schedule",
    purpose:
      "How many days must be allowed so that the days of work come with the confidence asked for.",
  },
  {
    name: "Materials",
    purpose:
      "Everything that is bought: quantity, waste, whole packs, and the price-book item it is bought as.",
  },
  {
    name: "Price",
    purpose: "From cost to a price that holds: overhead, contingency, margin, options, draws.",
  },
  {
    name: "Proposal",
    purpose: "What we offer to build, for what price, and what to know before.",
    portrait: true,
    ...page,
  },
  { name: "Orders", purpose: "What to order, by supplier, in whole packs.", ...page },
  {
    name: "Crew",
    purpose: "What to set out, dig, cut, pipe, open and lift.",
    portrait: true,
    ...page,
  },
  {
    name: "Wording",
    purpose: "The lines that the pages choose from: those not wanted are left out there.",
    page: true,
    printed: false,
  },
  {
    name: "Prices",
    purpose:
      "Items and rates copied from the office's price book, with who quoted them and until when.",
    printed: false,
  },
  {
    name: "Pumps",
    purpose: "The pumps of the price book with their curves, as on the day of the bid.",
    printed: false,
  },
  {
    name: "Water tables",
    purpose: "The published figures behind the water sheets, each with its source.",
    printed: false,
  },
] as const satisfies readonly Worksheet[];

export type SheetName = (typeof worksheets)[number]["name"];
