import {
  book,
  calc,
  count,
  days,
  lines,
  number,
  percent,
  smallLength,
  speed,
  table,
  text,
  walk,
  yesno,
} from "../../../engine/template/index.js";
import { monthColumns } from "../../tables/month-columns.js";
import { waterLoss } from "../../vocabulary/quantities.js";
import { capacity } from "../capacity.js";

const ofPlace = (column: string) => `INDEX(places.${column},MAX(place_at,1))`;
const own = (rule: string) => `${rule}=${rule}_in_book`;

/** The place's figure, unless the job has its own beside the office's rule. */
const used = (rule: string) => `IF(AND(place_at>0,${own(rule)}),${ofPlace(rule)},${rule})`;
const ofDrySpell = (rule: string) => `IF(spell_of_place,${ofPlace(rule)},${rule})`;

/** The figures that hold for this job: those of the place that it names, else the office's for all jobs. */
export const weatherUsed = lines("Weather used", {
  weather_place: walk(text, "Weather place", {
    section: "Sun and wind",
    optional: true,
    choices: "places.code",
    note: "Of sheet Places of the office book. Blank: the office's rules for all jobs hold.",
  }),
  place_at: calc(count, "IF(LEN(weather_place)>0,PLACE_OR_ZERO(places.code,weather_place),0)", "Row of the place", {
    working: true,
    zero: "none",
  }),
  place_looked_up: calc(yesno, `IF(place_at>0,IF(${ofPlace("looked_up")},TRUE,FALSE),FALSE)`, "Place looked up", {
    working: true,
  }),
  weather_known: calc(
    yesno,
    'IF(place_at>0,AND(place_looked_up,OR(evaporation_method<>"pan",place_has_pan)),weather_is_local)',
    "Weather is of this place",
    { working: true },
  ),
  storm_known: calc(yesno, "IF(place_at>0,place_looked_up,storm_is_local)", "Storm is of this place", {
    working: true,
  }),
  storm_rain: calc(smallLength, used("design_rain"), "Design storm used"),
  spell_of_place: calc(
    yesno,
    `AND(place_at>0,${["temperature_scale", "water_temperature", "air_temperature"].map(own).join(",")})`,
    "Temperatures of the place",
    { working: true, note: "Scale, water and air go together: where the job overrides one, its own three hold." },
  ),
  scale_used: calc(text, ofDrySpell("temperature_scale"), "Temperature scale used", { working: true }),
  water_used: calc(number, ofDrySpell("water_temperature"), "Water temperature used", { decimals: 0 }),
  air_used: calc(number, ofDrySpell("air_temperature"), "Air temperature used", { decimals: 0 }),
  humidity_used: calc(percent, used("air_humidity"), "Relative humidity used", { decimals: 0 }),
  wind_used: calc(speed, used("wind_speed"), "Wind used, as measured"),
  place_has_pan: calc(yesno, `IF(place_at>0,${ofPlace("has_pan")},FALSE)`, "Place has pan evaporation", {
    working: true,
  }),
  pan_used: calc(
    waterLoss,
    `IF(AND(place_has_pan,${own("pan_evaporation")}),${ofPlace("pan_evaporation")},pan_evaporation)`,
    "Pan evaporation used",
    { working: true },
  ),
});

/** The places of the office book, so that a job may choose any of them in the workbook. */
export const placesTable = table(
  "places",
  "Places in the office book",
  { rows: capacity.places, from: "places", filled: "LEN(code)>0" },
  {
    code: book(text, "Code"),
    description: book(text, "Place"),
    looked_up: book(yesno, "Looked up"),
    source: book(text, "Source"),
    design_rain: book(smallLength, "Design storm rain"),
    temperature_scale: book(text, "Scale"),
    water_temperature: book(number, "Water", { decimals: 0 }),
    air_temperature: book(number, "Air", { decimals: 0 }),
    air_humidity: book(percent, "Humidity", { decimals: 0 }),
    wind_speed: book(speed, "Wind"),
    pan_evaporation: book(waterLoss, "Pan evaporation"),
    has_pan: calc(yesno, "NOT(ISBLANK(pan_evaporation))", "Has pan evaporation"),
    ...Object.fromEntries(monthColumns.map((month) => [`rain_${month}`, book(days, `Rain days, ${month}`)])),
  },
);
