import type { OfficeBook } from "../../engine/book/office-book.js";
import type { JobRecord } from "../../engine/job/record.js";
import * as t from "../../engine/template/index.js";
import type { Identity } from "../../engine/workbook/write/identity.js";
import { soilVolume } from "../../sheets/vocabulary/quantities.js";

/**
 * A small invented trade, planting beds, with one of each thing that a template can hold.
 * None of its figures means anything.
 */
const source = "invented for the tests";

const fill = t.formula(
  "LAYER",
  "Volume of a layer",
  { ground: t.area, deep: t.smallLength },
  soilVolume,
  "ground*deep",
  source,
);
const pull = t.formula(
  "PULL",
  "An empirical rule on bare numbers",
  { flow: "gal/min", wide: "in" },
  "ft",
  "0.2*flow^1.85/wide^4.87",
  source,
);

const site = t.sheet("Site", "What was seen on the site.", [
  t.lines("The plot", {
    customer: t.input(t.text, "Customer"),
    remark: t.input(t.text, "Remark", { optional: true }),
    plot: t.input(t.length, "Length of the plot", { least: 1, most: 500, note: "Along the wall." }),
    depth: t.input(t.smallLength, "Depth of soil", { default: 6, least: 1, most: 24 }),
    spare: t.input(t.percent, "Spare", { default: 0.1, least: 0, most: 0.5 }),
    people: t.input(t.count, "People", { default: 2, least: 1, most: 9, whole: true }),
    begin: t.input(t.date, "First day", { optional: true }),
    paved: t.input(t.yesno, "Paved", { default: false }),
    finish: t.input(t.text, "Finish", { default: "rough", choices: ["rough", "smooth"] }),
    hose: t.input(t.flow, "Flow of the hose", { default: 8, least: 0 }),
    lowest: t.input(t.number, "Lowest level", { default: -2, least: -9.5, most: 0 }),
  }),
]);

const soils = t.sheet("Soils", "Soils to choose from.", [
  t.table(
    "soils",
    "Soils",
    {
      rows: 3,
      data: [
        { name: "loam", weight: 75 },
        { name: "sand", weight: 100 },
        { name: "peat", weight: 25 },
      ],
    },
    {
      name: t.published(t.text, "Soil", { source }),
      weight: t.published(t.density, "Weight", { source }),
    },
  ),
  t.lines("Constants", {
    gravity: t.published(t.number, "A constant", { value: 32.174, source }),
    reach: t.published(t.length, "Reach of an arm", { value: 3, source }),
  }),
]);

const beds = t.sheet("Beds", "The beds, one a row.", [
  t.table(
    "beds",
    "Beds",
    { rows: 4, opening: 1, filled: "ISNUMBER(wide)", note: "One bed a row." },
    {
      name: t.input(t.text, "Bed"),
      wide: t.input(t.smallLength, "Width", { least: 1, most: 120, note: "Inside the boards." }),
      soil: t.input(t.text, "Soil", { choices: "soils.name", default: "loam" }),
      item: t.input(t.text, "Edging", { optional: true }),
      tall: t.input(t.smallLength, "Height", { optional: true, least: 0 }),
      surface: t.calc(t.area, "wide*plot", "Surface"),
      filling: t.calc(soilVolume, "LAYER(surface,IF(ISBLANK(tall),depth,tall))*(1+spare)", "Soil"),
      heavy: t.calc(
        t.weight,
        "filling*INDEX(soils.weight,MATCH(soil,soils.name,0))",
        "Weight of the soil",
      ),
      carried: t.calc(soilVolume, "above.carried+filling", "Soil so far", {
        first: "filling",
        blank: "0",
      }),
      place: t.calc(t.count, (row) => `${row}`, "Place"),
      said: t.calc(t.text, 'UPPER(name)&": "&FIXED(filling,1)', "In words"),
      wide_enough: t.check(
        "wide>=12[in]",
        "Bed {name} is {wide} wide; 12 in is the least: widen it",
        {
          label: "Wide enough",
        },
      ),
    },
  ),
]);

const prices = t.sheet("Prices", "What it costs.", [
  t.table(
    "edgings",
    "Edging",
    { rows: 4, from: "edgings", usedBy: ["beds.item"] },
    {
      code: t.book(t.text, "Code"),
      cost: t.book(t.moneyPerLength, "Cost"),
      quoted: t.book(t.date, "Quoted on"),
    },
  ),
  t.table(
    "bed_prices",
    "Price of each bed",
    { rows: 4, beside: "beds", filled: "ISNUMBER(wide)" },
    {
      label: t.calc(t.text, "name", "Bed"),
      edging: t.calc(
        t.money,
        "IF(ISBLANK(item),0,2*plot*INDEX(edgings.cost,MATCH(item,edgings.code,0)))",
        "Edging",
      ),
    },
  ),
  t.lines("In all", {
    soil_total: t.calc(soilVolume, "SUM(beds.filling)", "Soil", { strong: true }),
    edging_total: t.calc(t.money, "SUM(bed_prices.edging)", "Edging", { strong: true }),
    heavy_total: t.calc(t.tons, "SUM(beds.heavy)", "Weight"),
    widest: t.calc(t.smallLength, "MAX(beds.wide)", "Widest bed"),
    hose_loss: t.calc(t.head, "PULL(hose,1[in])", "Lost in the hose"),
    days_needed: t.calc(t.count, "ROUNDUP(ROUND(soil_total/3[yd³]/people,6),0)", "Days"),
    last_day: t.calc(t.date, "IF(ISBLANK(begin),0,begin+days_needed*1[days])", "Last day"),
    level: t.calc(t.number, "lowest*gravity", "Level"),
    within_reach: t.check("widest<=2*reach", "The widest bed is {widest|0}; {reach} is the reach", {
      label: "Within reach",
      level: "look",
    }),
    has_bed: t.check("SUM(beds.wide)>0", 'Fill in a "bed" first', { label: "Any bed" }),
  }),
]);

const letter = t.sheet(
  "Letter",
  "For the customer.",
  [
    t.prose("What we do", {
      greeting: t.calc(t.text, '"For "&customer&IF(paved,", paved","")', ""),
      promise: t.calc(
        t.text,
        "~{soil_total|1} of soil, {finish}, {spare} spare, by {last_day}",
        "",
      ),
      aside: t.calc(t.text, 'remark&""', ""),
    }),
    t.paragraphs("Cautions", "Lift with your knees.", "=1+1 is no formula here."),
  ],
  { portrait: true },
);

export const toy = t.template({
  name: "toy",
  version: 3,
  title: "Planting beds (invented)",
  sheets: [site, soils, beds, prices, letter],
  formulas: [fill, pull],
  headline: ["edging_total", "soil_total"],
});

export const toyBook: OfficeBook = {
  name: "Toy prices",
  asOf: "2026-05-01",
  mark: "0".repeat(64),
  tables: {
    edgings: [
      { code: "OAK", cost: 4, quoted: "2026-04-30" },
      { code: "TIN", cost: 2.5 },
      { code: "SLATE", cost: 9 },
    ],
  },
};

export const toyJob: JobRecord = {
  rillbook: 1,
  job: "T-1",
  template: "toy",
  version: 3,
  units: "us",
  inputs: {
    customer: "An invented customer",
    plot: 20,
    begin: "2026-05-31",
    beds: [
      { name: "Wall", wide: 36, item: "OAK" },
      { name: "Path", wide: 18, soil: "sand", tall: 10 },
    ],
  },
};

export const toyIdentity: Identity = {
  job: "T-1",
  template: "toy",
  version: 3,
  units: "us",
  about: "Invented.",
  book: "Toy prices",
  bookAsOf: "2026-05-01",
  bookMark: "0".repeat(64),
};
