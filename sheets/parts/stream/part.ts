import { bullet, bulletEachRow, eachRow, line } from "../../plan/page-line.js";
import { beds } from "../../tables/beds.js";
import { channelFormulas } from "../../vocabulary/channel.js";
import { part } from "../part.js";
import { pricePerLength, runsLength, streamCatchment, wayOfPipes } from "./cells.js";
import { builtRuns, runReadings } from "./metered.js";
import { openWater, poolsSaid } from "./pools-said.js";
import { poolsTable } from "./pools-table.js";
import { streamBlocks } from "./stream.js";

export const stream = part("Stream", "The runs and pools between the falls, and the water in them.", {
  blocks: { Stream: streamBlocks, Wording: [poolsSaid, openWater] },
  below: { "Water tables": [beds] },
  formulas: channelFormulas,
  adds: {
    given: "INDEX(runs.length_counted,1)>0",
    "water out": "stream_water",
    "first fill": ["bed_water_kept", "pool_water"],
    "wet area": "stream_surface",
    catchment: "stream_catchment",
    covered: "stream_surface",
    siphoned: "SUM(pool_siphons.water_drawn)",
    metered: "SUMPRODUCT((built_runs.depth_metered>0)*1)",
  },
  metered: [builtRuns],
  readings: [runReadings],
  cells: {
    "design rain": streamCatchment,
    "trench rules": wayOfPipes,
    "price check": pricePerLength,
    "figures said": runsLength,
  },
  crew: [
    ...eachRow(
      "stop: water",
      poolsTable,
      "STOP. {name}: water {water_depth|up} deep. Do not fill it before the barrier that the authority wants is agreed.",
      { when: "NOT(fenced)" },
    ),
    ...bulletEachRow(
      "step: set out",
      poolsTable,
      "{name}: {length_counted} by {width_counted}, {depth_counted|up} deep from the lip of level {before_level|0} to the finished bed; running, the water stands {water_depth|up} deep.",
    ),
    bullet("caution: children", "{child_caution}", "LEN(child_caution)>0"),
  ],
  handOver: [
    bullet(
      "cautions",
      "A child can drown in ‹2 in|5 cm› of water: never leave small children alone near it. Keep the vault's lid fastened.",
    ),
  ],
  proposal: [
    bullet("scope", "A stream {runs_length} long.", "SUM(runs.length_counted)>0"),
    ...bulletEachRow(
      "scope",
      poolsTable,
      "{name}: an open pool about {length_counted} by {width_counted}, water up to {water_depth|up} deep.",
    ),
    line("note: children", "{barrier_words}", "deepest_water>barrier_depth"),
    line(
      "note: children",
      `A child can drown in ‹2 in|5 cm› of water{IF(open_water_depth>=drowning_depth,"; here it stands up to "&open_water_said&" deep","")}: never leave small children alone near it.{IF(deepest_water>barrier_depth,""," Local rules may ask for a barrier.")}`,
    ),
    line("note: children", "Public lines are marked before we dig (call 811); please show us your private ones."),
  ],
  told: ["runs.length", "runs.width", "pools.length", "pools.width"].flatMap((name) => [name, `${name}_plus`]),
});
