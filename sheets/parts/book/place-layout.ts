import type { BookColumn, BookTable } from "../../../engine/template/book-layout.js";
import { monthColumns } from "../../tables/month-columns.js";

const figure = (key: string, means: string, least: number, most: number): BookColumn => ({
  key,
  kind: "number",
  required: true,
  means,
  least,
  most,
});

/** The office book's places: what an office looks up once for each place that it works in. */
export const placeLayout: BookTable = {
  name: "places",
  sheet: "Places",
  means: "Weather by place: a job names one as weather_place. Without one, the rules for all jobs hold.",
  optional: true,
  starter: [],
  columns: [
    { key: "code", kind: "code", required: true, means: "What the office calls the place; each code once." },
    { key: "description", kind: "text", required: true, means: "Which places it stands for." },
    {
      key: "looked_up",
      kind: "yesno",
      means: "yes: all of its row was looked up for this place. Anything else warns in each bid.",
    },
    { key: "source", kind: "text", means: "Weather station, atlas, and the day looked up." },
    figure("design_rain", "Rain of the design storm, ‹in|mm›.", 0, 800),
    {
      key: "temperature_scale",
      kind: "text",
      required: true,
      choices: ["F", "C"],
      means: "Scale of both temperatures.",
    },
    figure("water_temperature", "Water in a dry spell, in the scale of its row.", 1, 110),
    figure("air_temperature", "Air in a dry spell, in the scale of its row.", 1, 130),
    { ...figure("air_humidity", "Relative humidity in a dry spell.", 0.02, 1), percent: true },
    figure("wind_speed", "Wind in a dry spell, as measured, ‹ft/s|m/s›.", 0, 40),
    {
      ...figure("pan_evaporation", "Class A pan evaporation a day, ‹in|mm›; blank: the rule for all jobs.", 0, 26),
      required: false,
    },
    ...monthColumns.map((month) =>
      figure(`rain_${month}`, `Days with ‹0.01 in|0.25 mm› of rain or more, ${month}.`, 0, 28),
    ),
  ],
};
