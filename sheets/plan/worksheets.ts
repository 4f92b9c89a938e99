import type { SheetDeclaration } from "../../engine/template/index.js";

/** A worksheet without its blocks, which the parts bring. */
export type Worksheet = Omit<SheetDeclaration, "blocks">;

const page = { handout: true, page: true } as const;

/** The worksheets of a water feature in their order, and what each is for. */
export const worksheets = [
  { name: "Job", group: "given", purpose: "Customer, dates, company, and how the water feature will run." },
  {
    name: "Falls",
    group: "design",
    purpose: "The falls: the flow that each look wants, what arrives, and how the water goes over the lip.",
  },
  {
    name: "Stream",
    group: "design",
    purpose: "The stream between the falls: depth, banks, and the water that is out of the basin while it runs.",
  },
  {
    name: "Bubblers",
    group: "design",
    purpose: "Stones and urns that bubble: look, flow, weight and base of each, and how far its drops fly.",
  },
  {
    name: "Piping",
    group: "design",
    purpose: "The lines and the main: flow and head that each line needs, its valve setting, and what the main loses.",
  },
  {
    name: "Pump",
    group: "design",
    purpose: "Which pump brings the water up, at which speed, and what it costs to run.",
  },
  {
    name: "Electric",
    group: "design",
    purpose:
      "Circuit of the pump and of what runs beside it: load, breaker, wire, voltage drop, and who does the work.",
    printed: false,
  },
  {
    name: "Basin",
    group: "design",
    purpose: "The buried basin: does it hold the water that the stream takes up, and the days between fills?",
  },
  {
    name: "Liner",
    group: "design",
    purpose: "Liner pieces, their cuts from stocked rolls, and the people to carry them.",
  },
  {
    name: "Stone",
    group: "design",
    purpose: "Stone by class: volume, weight, and the heaviest stone against the machine.",
  },
  {
    name: "Earthwork",
    group: "design",
    purpose: "Strip, dig, trench, berm, haul; trees, walls, and dig safety.",
  },
  {
    name: "Labor",
    group: "estimate",
    purpose: "Man-hours from quantities and production rates; crew, machine and work days.",
  },
  {
    name: "Schedule",
    group: "estimate",
    purpose: "Days to allow for rain, with the confidence chosen.",
    printed: false,
  },
  {
    name: "Materials",
    group: "estimate",
    purpose: "Everything to order: quantity, waste, packs, price.",
  },
  {
    name: "Price",
    group: "estimate",
    purpose: "From cost to price: overhead, contingency, margin, options, draws.",
  },
  {
    name: "Proposal",
    group: "papers",
    purpose: "What we will build, for what price.",
    portrait: true,
    formPages: 2,
    namesTrail: true,
    ...page,
  },
  {
    name: "Orders",
    group: "papers",
    purpose: "What to order, a page for each supplier, in whole packs.",
    portrait: true,
    ...page,
  },
  {
    name: "Crew",
    group: "papers",
    purpose: "What to set out, dig, cut, pipe, set and lift.",
    portrait: true,
    ...page,
  },
  {
    name: "Hand-over",
    group: "papers",
    purpose: "What the owner is left with: how it runs, what to do and when to call.",
    portrait: true,
    formPages: 1,
    ...page,
  },
  {
    name: "Built",
    group: "after",
    purpose: "What the job really took, typed in once it is decided and done. It moves no figure of the bid.",
    afterwards: true,
    printedOnce: "built_given",
  },
  {
    name: "Look back",
    group: "after",
    purpose: "What the job took against what was planned, and what each difference comes from.",
    afterwards: true,
    printedOnce: "built_given",
  },
  {
    name: "Drawings",
    group: "papers",
    purpose: "The water course, the manifold and the basin, drawn from this bid's figures.",
    printed: false,
  },
  {
    name: "Balance",
    group: "reference",
    hidden: true,
    purpose:
      "How the pump's flow really divides between the lines: all valves open at full speed, and at the valve settings.",
  },
  {
    name: "Drawing points",
    group: "reference",
    hidden: true,
    purpose: "Where the lines of the drawings run, and what stands beside them.",
    printed: false,
  },
  {
    name: "Wording",
    group: "reference",
    hidden: true,
    purpose: "Lines that Proposal, Orders, Crew and Hand-over choose from.",
    page: true,
    printed: false,
  },
  {
    name: "Prices",
    group: "reference",
    hidden: true,
    purpose: "Items and rates copied from the office book, with who quoted them and until when.",
    printed: false,
  },
  {
    name: "Pumps",
    group: "reference",
    hidden: true,
    purpose: "The pumps of the office book with their curves, as on the day of the bid.",
    printed: false,
  },
  {
    name: "Water tables",
    group: "reference",
    hidden: true,
    purpose: "The published figures behind the water sheets, each with its source.",
    printed: false,
  },
] as const satisfies readonly Worksheet[];

export type SheetName = (typeof worksheets)[number]["name"];
