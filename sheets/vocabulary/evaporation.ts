import { formula, number, text, yesno } from "../../engine/template/index.js";

/** Plain numbers: a scale with its zero elsewhere cannot be converted by a factor. */
const CELSIUS = formula(
  "CELSIUS",
  "A temperature in degrees Celsius, given in the scale F or C",
  { temperature: number, scale: text },
  number,
  'IF(scale="C",temperature,(temperature-32)/1.8)',
  "definition of the scales",
);

const BETWEEN_CELSIUS = formula(
  "BETWEEN_CELSIUS",
  "Does a temperature, given in the scale F or C, lie between two in degrees Celsius?",
  { temperature: number, scale: text, low: number, high: number },
  yesno,
  "AND(CELSIUS(temperature,scale)>=low,CELSIUS(temperature,scale)<=high)",
  "definition of the scales",
);

const VAPOR_PRESSURE = formula(
  "VAPOR_PRESSURE",
  "Pressure of saturated water vapor over water, by the Magnus form",
  { celsius: number },
  "kPa",
  "0.6112*EXP(17.62*celsius/(243.12+celsius))",
  "WMO-No. 8, Guide to Instruments and Methods of Observation, Annex 4.B (from memory)",
);

const EVAPORATION = formula(
  "EVAPORATION",
  "Depth of water that evaporates in a day, by the Carrier form with an activity factor",
  {
    air_speed: "ft/s",
    water_pressure: "inHg",
    air_pressure: "inHg",
    latent_heat: "Btu/lb",
    activity: number,
  },
  "in/day",
  "IF(latent_heat>0,activity*(95+0.425*60*air_speed)*MAX(0,water_pressure-air_pressure)/latent_heat*24/(62.4/12),0)",
  "ASHRAE Transactions 104 (1998) part 1A: W = (95 + 0.425 v)(pw - pa)/Y, lb/h on a square foot; 62.4 lb/ft³",
);

export const evaporationFormulas = [CELSIUS, BETWEEN_CELSIUS, VAPOR_PRESSURE, EVAPORATION] as const;
