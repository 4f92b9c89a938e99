import {
  area,
  calc,
  check,
  lines,
  number,
  office,
  percent,
  precise,
  prose,
  speed,
  text,
  walk,
  yesno,
} from "../../../engine/template/index.js";
import { sunExposures, windExposures } from "../../tables/exposures.js";
import { oneOf } from "../../vocabulary/one-of.js";
import { heatOfMass, vaporPressure, waterLoss, waterVolume } from "../../vocabulary/quantities.js";
import { sumOf } from "../added.js";
import type { Whole } from "../brought.js";

const celsius = (name: string) => `CELSIUS(${name},scale_used)`;

const inputs = lines("Evaporation and splash, dry spell", {
  weather_is_local: office(yesno, "Local weather entered", { section: "Weather", default: false }),
  evaporation_method: office(text, "Evaporation method", {
    section: "Weather",
    default: "air and water",
    choices: ["air and water", "pan"],
  }),
  temperature_scale: office(text, "Temperature scale, F or C", {
    section: "Weather",
    default: "‹F|C›",
    choices: ["F", "C"],
  }),
  water_temperature: office(number, "Water temperature", {
    section: "Weather",
    default: "‹75|23.8888888888889›",
    least: 1,
    most: 110,
    decimals: 0,
  }),
  air_temperature: office(number, "Air temperature", {
    section: "Weather",
    default: "‹85|29.4444444444444›",
    least: 1,
    most: 130,
    decimals: 0,
  }),
  air_humidity: office(percent, "Relative humidity", {
    section: "Weather",
    default: 0.5,
    least: 0.02,
    most: 1,
    decimals: 0,
  }),
  wind_speed: office(speed, "Wind, as measured", { section: "Weather", default: 4.5, least: 0, most: 40 }),
  wind_exposure: walk(text, "Wind at the water", {
    section: "Sun and wind",
    default: "as measured",
    choices: "wind_exposures.name",
    note: `Against the weather station, ${oneOf(windExposures.data)}`,
  }),
  sun_exposure: walk(text, "Sun on the water", {
    section: "Sun and wind",
    default: "part sun",
    choices: "sun_exposures.name",
    note: `Sun warms the water: more evaporates; ${oneOf(sunExposures.data)}`,
  }),
  latent_heat: office(heatOfMass, "Heat to evaporate water", {
    section: "Weather",
    default: 1048,
    least: 1000,
    most: 1080,
    decimals: 0,
    source: "steam tables, at 80 °F (from memory)",
  }),
  water_activity: office(number, "Activity factor", {
    section: "Weather",
    default: 1,
    least: 0.4,
    most: 2,
    note: "Still water 0.74 to 1, tumbling water more.",
    source: "quiet water measured at 74% of the form, busy pools at 126%: ASHRAE Transactions 104 (1998)",
  }),
  pan_evaporation: office(waterLoss, "Class A pan evaporation", {
    section: "Weather",
    default: 0.3,
    least: 0,
    most: 1,
  }),
  pan_coefficient: office(number, "Pan coefficient", {
    section: "Weather",
    default: 0.7,
    least: 0.4,
    most: 1,
    source: "NOAA NWS 33 (from memory): 0.70 to 0.75",
  }),
  splash_share: office(precise, "Splash lost per 1,000 pumped", {
    section: "Weather",
    default: 0.5,
    least: 0,
    most: 20,
    decimals: 2,
    note: "‹Gallons of each 1,000 gallons|Liters of each 1,000 liters›, lost for good. The most doubtful figure of this sheet.",
    source: "common practice, no source",
  }),
});

const coldest = -20;
const hottest = 55;
const warmestWater = 40;
const between = (name: string, least: number, most: number) => `BETWEEN_CELSIUS(${name},scale_used,${least},${most})`;

const results = ({ added }: Pick<Whole, "added">) =>
  lines("Water lost per day", {
    temperatures_plausible: check(
      `AND(${between("water_used", 0, warmestWater)},${between("air_used", coldest, hottest)})`,
      `Water at {water_used|0}, air at {air_used|0} °{scale_used}: outdoors 0 to ${warmestWater} °C, and ${coldest} to ${hottest} °C. Correct temperatures or scale on sheet Office rules.`,
      { label: "Temperature out of range" },
    ),
    wind_at_water: calc(
      speed,
      "IF(ISBLANK(wind_exposure),wind_used,wind_used*PICK(wind_exposures.share,wind_exposures.name,wind_exposure))",
      "Wind over this water",
      { working: true },
    ),
    stream_warmth: calc(
      number,
      `${celsius("water_used")}+IF(ISBLANK(sun_exposure),0,PICK(sun_exposures.warmer,sun_exposures.name,sun_exposure))`,
      "Water temperature in °C",
      { working: true, decimals: 1 },
    ),
    water_pressure: calc(vaporPressure, "VAPOR_PRESSURE(stream_warmth)", "Vapor pressure at water", { working: true }),
    air_pressure: calc(vaporPressure, `humidity_used*VAPOR_PRESSURE(${celsius("air_used")})`, "Vapor pressure of air", {
      working: true,
    }),
    evaporation_rate: calc(
      waterLoss,
      'IF(evaporation_method="pan",pan_coefficient*pan_used,EVAPORATION(wind_at_water,water_pressure,air_pressure,latent_heat,water_activity))',
      "Evaporation rate",
    ),
    wet_area: calc(area, sumOf(added("wet area"), "0[ft²]"), "Wet area", {
      note: "Water in the open, still or falling. The basin lies under stone and is left out.",
    }),
    evaporation_a_day: calc(waterVolume, "evaporation_rate*1[days]*wet_area*hours_a_day", "Evaporated per day"),
    splash_a_day: calc(waterVolume, "total_flow*1[days]*hours_a_day*splash_share/1000", "Splashed away per day"),
    loss_a_day: calc(waterVolume, "evaporation_a_day+splash_a_day", "Lost per day", {
      strong: true,
    }),
  });

const doubts = prose("How far to trust this", {
  evaporation_doubts: calc(
    text,
    "~Evaporation by this form may be off by a quarter or more: quiet water was measured at 74% of it, busy pools at 126%, and later tests found it inaccurate. Wind and splash vary more. Treat the day table as a guide; a fill line with a float is the safeguard, and a loss that grows is a leak until proved otherwise.",
    "Doubts",
  ),
});

export const evaporation = (all: Pick<Whole, "added">) => [inputs, results(all), doubts] as const;
